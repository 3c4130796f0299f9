/**
 * The part files: readable, sourced, and such that every terminal that people wire does something inside.
 */
import { describe, expect, it } from 'vitest';
import { readPartKind } from '../../../server/src/hardware';
import type { PartFile } from '../../../server/src/hardware/generated/part';
import { isFigure, libraryFiles, objectsOf, saysWhereFrom } from './library-files';

const files = libraryFiles<PartFile>('parts');

it('has the kinds of the first release', () => {
  const kinds = [
    ...['battery', 'buzzer', 'capacitor', 'illuminated-push-button', 'led', 'potentiometer', 'push-button'],
    ...['resistor', 'servo', 'toggle-switch'],
  ];
  expect(files.map(({ name }) => name)).toEqual(expect.arrayContaining(kinds));
});

describe.each(files)('part file $name', ({ name, file, text, data }) => {
  it('is read without a problem, and its kind is its file name', () => {
    const read = readPartKind(file, text);
    expect(read.problems).toEqual([]);
    expect(read.value?.kind).toBe(name);
  });

  it('names the source of every figure and every default figure, or says that it is from memory', () => {
    const figures = objectsOf(data).filter(isFigure);
    const defaults = objectsOf(data.parameters ?? {}, ['parameters']).filter(
      ({ value }) => value.type === 'quantity' && typeof value.default === 'string',
    );
    const silent = [...figures, ...defaults].filter((holder) => !saysWhereFrom(holder, data.sources ?? {}));
    expect(silent.map(({ path }) => path)).toEqual([]);
  });

  it('uses every source that it lists', () => {
    const used = new Set(objectsOf(data).map(({ value }) => value.source));
    expect(Object.keys(data.sources ?? {}).filter((key) => !used.has(key))).toEqual([]);
  });

  it('has no terminal that leads nowhere, and no parameter that people cannot understand', () => {
    const touched = new Set(
      data.inside.flatMap((piece) => [...piece.ends, ...('wiper' in piece ? [piece.wiper] : [])]),
    );
    expect(data.terminals.filter(({ id }) => !touched.has(id))).toEqual([]);
    for (const [key, parameter] of Object.entries(data.parameters ?? {})) {
      expect({ key, about: parameter.about }).toEqual({ key, about: expect.stringMatching(/.{15}\.$/) });
    }
  });

  it('tells its terminals apart wherever the way round matters, and has both poles then', () => {
    const poled = data.terminals.filter(({ polarity }) => polarity !== undefined);
    expect(poled.filter(({ tell }) => tell === undefined)).toEqual([]);
    expect(poled.filter(({ polarity }) => polarity === '+').length).toBe(
      poled.filter(({ polarity }) => polarity === '-').length,
    );
  });

  it('gives polarity to the ends of every lamp, source, load and polarised capacitor', () => {
    for (const piece of data.inside) {
      const poled =
        ['diode', 'source', 'load'].includes(piece.type) || ('polarised' in piece && piece.polarised);
      const ends = poled ? [...piece.ends] : [];
      const poles = ends.map(
        (end) => data.terminals.find(({ id, polarity }) => id === end && polarity)?.polarity,
      );
      expect({ id: piece.id, poles }).toEqual({ id: piece.id, poles: poled ? ['+', '-'] : [] });
    }
  });
});
