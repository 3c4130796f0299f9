/** Thickness and habits of the hookup wire, as people write them. */
import { describe, expect, it } from 'vitest';
import { readManifest } from '../../../server/src/hardware';
import { parseGauge } from '../../../server/src/hardware/manifest/gauge';
import { openLibrary } from './library';

it.each([
  ['AWG 24', { awg: 24 }],
  ['24 awg', { awg: 24 }],
  ['AWG 2/0', { awg: -1 }],
  ['0.25 mm2', { squareMillimetres: 0.25 }],
  ['.14 mm²', { squareMillimetres: 0.14 }],
  ['24', undefined],
  ['AWG 99', undefined],
  ['0 mm2', undefined],
  ['thin', undefined],
])('reads %j', (text, gauge) => {
  expect(parseGauge(text)).toEqual(gauge);
});

describe('a manifest', () => {
  const read = (wire: object, entry: object) =>
    readManifest(
      'hardware.jsonc',
      JSON.stringify({
        board: 'nano-v3',
        wire,
        parts: { B: { kind: 'push-button', subassembly: 'lid', mount: 'M3 nut' } },
        wires: [{ from: 'D2', to: 'B.1', ...entry }],
      }),
      openLibrary(),
    );

  it('gives what it says of wires and mounting', () => {
    const { value, problems } = read(
      { gauge: 'AWG 26', strip: '4 mm', slack: '15%' },
      { gauge: '0.5 mm2', strip: '6 mm' },
    );
    expect(problems).toEqual([]);
    expect(value?.wire).toEqual({ gauge: { awg: 26 }, strip: 0.004, slack: 0.15 });
    expect(value?.wires[0]).toMatchObject({ gauge: { squareMillimetres: 0.5 }, strip: 0.006 });
    expect(value?.parts[0]).toMatchObject({ subassembly: 'lid', mount: 'M3 nut' });
  });

  it('is told of a thickness that is none, at its place, and keeps the rest', () => {
    const { value, problems } = read({ gauge: 'thick' }, { length: '10 cm' });
    expect(problems.map(({ code, message }) => [code, message])).toEqual([
      ['wrong-figure', '"thick" is no thickness of a wire.'],
    ]);
    expect(value?.wire).toBeUndefined();
    expect(value?.wires).toHaveLength(1);
  });
});
