/** The bundled examples: the clean builds are silent, the faulty one tells every planted fault, every fix cures. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openTestBench, root, type TestBench } from '../fixture/bench';
import { checkFixes } from '../fixture/check-example';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

const folder = join(root, 'hardware-schemas/examples');

function filesOf(name: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (const entry of readdirSync(join(folder, name), { withFileTypes: true })) {
    if (entry.isFile()) files[entry.name] = readFileSync(join(folder, name, entry.name), 'utf8');
  }
  return files;
}

/** What was planted in the faulty harbour model, by the finding's key. */
const planted = [
  'floating-input:D3',
  'idle-wire:D6',
  'lamp-reversed:restart',
  'lamp-unlimited:beacon',
  'mode-missing:D10',
  'no-pwm:D7',
  'no-such-pin:24',
  'output-shorted:D2',
  'pin-over-recommended:D5',
  'position-shared:GND:w9',
  'reset-not-grounded:restart',
  'unwired-pin:D12',
  'unwired-terminal:tide',
  'value-not-in-stock:R3',
];

describe.each(readdirSync(folder))('%s', (name) => {
  it('gives the findings it should and no others', () => {
    const keys = bench.analyse(filesOf(name)).findings.map((finding) => finding.key);
    expect(keys.sort()).toEqual(name.endsWith('-faulty') ? planted : []);
  });

  it('is cured of each by each of its fixes', () => {
    const files = filesOf(name);
    const snapshot = bench.analyse(files);
    for (const finding of snapshot.findings) checkFixes(bench, { files }, snapshot, finding);
    // Nothing can fix a number the board does not have, or a pin without PWM: those have no fix to offer.
    const fixable = snapshot.findings.filter((finding) => finding.fixes.length > 0).length;
    expect(fixable).toBe(name.endsWith('-faulty') ? 11 : 0);
  });
});

it('has a clean and a faulty build of the harbour model', () => {
  expect(readdirSync(folder)).toEqual(expect.arrayContaining(['harbour-model', 'harbour-faulty']));
});
