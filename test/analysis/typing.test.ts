/** While a line is being typed, nothing may be told that is only so because the line is not finished. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openTestBench, root, type TestBench } from '../fixture/bench';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

const folder = join(root, 'hardware-schemas/examples/harbour-model');
const sketch = readFileSync(join(folder, 'harbour-model.ino'), 'utf8');
const manifest = readFileSync(join(folder, 'hardware.jsonc'), 'utf8');

const lines = [
  'if (isHigh) { digitalWrite(beacon, HIGH); }',
  'for (int i = 0; i < 3; i++) {\n  tone(horn, 440 + 10 * i);\n}',
  'Serial.println("tide (" + String(level) + ")");',
  'switch (level) { case 1: setLamp(beacon, true); break; default: break; }',
];

describe.each([
  'void setup() {',
  'void loop() {',
  'void setLamp(byte pin, bool on) {',
  'void moveGate(bool shut) {',
])('typed at the head of %s', (head) => {
  it.each(lines)('%s', (line) => {
    const at = sketch.indexOf(head) + head.length;
    expect(at).toBeGreaterThan(head.length);
    const told: string[] = [];
    for (let typed = 1; typed <= line.length; typed += 1) {
      const text = `${sketch.slice(0, at)}\n  ${line.slice(0, typed)}${sketch.slice(at)}`;
      const { findings } = bench.analyse({ 'harbour-model.ino': text, 'hardware.jsonc': manifest });
      for (const finding of findings)
        told.push(`${JSON.stringify(line.slice(0, typed))}: ${finding.rule} ${finding.key}`);
    }
    expect(told).toEqual([]);
  });
});
