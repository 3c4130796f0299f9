/**
 * The draft over sketches with labels set by hand (labels.ts): the share of pins with a right kind, no error on any
 * drafted manifest, and a second run that changes nothing.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createAnalyser, draftManifest, openLibrary } from '../../../server/src/analysis';
import { loadLibrary } from '../../../server/src/files';
import { createSketchParser } from '../../../server/src/sketch';
import { root } from '../../fixture/bench';
import { type Labelled, labelled } from './labels';

/** Pins with their right kinds. */
function labelsOf({ right }: Labelled): readonly (readonly [pin: string, kinds: readonly string[]])[] {
  return right.split('; ').flatMap((group) => {
    const [kinds = '', pins = ''] = group.split(': ');
    return pins.split(' ').map((pin) => [pin, kinds.split('|')] as const);
  });
}

/** The measured share less a little: a change that guesses worse fails. */
const wanted = 0.8;

test('right kinds, no errors, nothing new in a second run', { timeout: 120_000 }, async () => {
  const parser = await createSketchParser();
  const texts = loadLibrary(join(root, 'hardware-schemas'));
  const library = openLibrary(texts, () => undefined);
  const analyser = createAnalyser(texts, () => undefined);
  expect(labelled.length).toBeGreaterThanOrEqual(30);
  let right = 0;
  let all = 0;
  const wrong: string[] = [];
  for (const label of labelled) {
    const text = label.text ?? readFileSync(join(root, 'test/oracle/sketches', label.sketch), 'utf8');
    const parsed = parser.parse('sketch.ino', text);
    const draft = draftManifest(library, { file: 'hardware.jsonc', sources: [parsed], board: label.board });
    if (!draft.ok) throw new Error(`${label.sketch}: ${draft.why}`);
    const manifest = { file: 'hardware.jsonc', text: draft.text };
    const { findings, faults } = analyser.analyse({ manifest, sources: [parsed] });
    expect(faults).toEqual([]);
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(
      errors.map(({ message }) => message),
      label.sketch,
    ).toEqual([]);
    const again = draftManifest(library, { file: 'hardware.jsonc', sources: [parsed], text: draft.text });
    expect(again.ok && again.edits, label.sketch).toEqual([]);
    for (const [pin, kinds] of labelsOf(label)) {
      const kind = draft.added.find(({ pins }) => pins.includes(pin))?.kind ?? 'nothing';
      all += 1;
      if (kinds.includes(kind)) right += 1;
      else wrong.push(`${label.sketch} ${pin}: ${kind}, not ${kinds.join(' or ')}`);
    }
    parsed.dispose();
  }
  console.log(`right kinds: ${right} of ${all} pins in ${labelled.length} sketches\n${wrong.join('\n')}`);
  expect(right / all).toBeGreaterThan(wanted);
});
