/** The façade: go to definition, bad input, the last good build. */
import { beforeAll, describe, expect, it } from 'vitest';
import { createAnalyser } from '../../server/src/analysis';
import { loadLibrary } from '../../server/src/files';
import { openTestBench, root, type TestBench } from '../fixture/bench';
import { readFixture } from '../fixture/read-fixture';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

const sketch = `const int beacon = 7;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); }
`;
const manifest = `{
  "format": 1,
  "board": "nano-v3",
  "parts": { "beacon": { "kind": "led" }, "R1": { "kind": "resistor", "value": "470" } },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"] }]
}
`;

describe('go to definition', () => {
  it('leads from a pin in the sketch to its wire, and back to the uses', () => {
    const snapshot = bench.analyse({ 'sketch.ino': sketch, 'hardware.jsonc': manifest });
    const [wire] = snapshot.definition('sketch.ino', sketch.indexOf('beacon, OUTPUT') + 2);
    expect(wire && manifest.slice(wire.start, wire.end)).toBe('D7');
    const uses = snapshot.definition('hardware.jsonc', manifest.indexOf('D7') + 1);
    expect(uses.map((span) => sketch.slice(span.start, span.end))).toEqual(['beacon', 'beacon']);
  });

  it('leads from a part in a wire to its entry', () => {
    const snapshot = bench.analyse({ 'sketch.ino': sketch, 'hardware.jsonc': manifest });
    const [entry] = snapshot.definition('hardware.jsonc', manifest.indexOf('"R1", "beacon"') + 2);
    expect(entry?.start).toBe(manifest.indexOf('R1'));
  });
});

describe('bad input', () => {
  it.each([
    ['an empty file', ''],
    ['a list', '[1, 2]'],
    ['half a file', manifest.slice(0, 60)],
    ['a binary file', '\u0000\u0001\uFFFD\u0002PNG'],
    ['a number', '3'],
    ['an unknown board', manifest.replace('nano-v3', 'nona-v3')],
    ['a newer format', manifest.replace('"format": 1', '"format": 9')],
    [
      'a key that every object has',
      '{ "format": 1, "board": "nano-v3", "__proto__": {}, "parts": { "__proto__": { "kind": "led" } } }',
    ],
  ])('tells where %s is wrong', (_, text) => {
    const snapshot = bench.analyse({ 'sketch.ino': sketch, 'hardware.jsonc': text });
    const told = snapshot.findings.filter((finding) => finding.rule === 'manifest-fault');
    expect(told.length).toBeGreaterThan(0);
    for (const { span } of told) {
      expect(span.file).toBe('hardware.jsonc');
      expect(span.end).toBeLessThanOrEqual(text.length);
      expect(span.start).toBeLessThanOrEqual(span.end);
    }
  });

  it('offers the nearest board', () => {
    const snapshot = bench.analyse({
      'sketch.ino': sketch,
      'hardware.jsonc': manifest.replace('nano-v3', 'nona-v3'),
    });
    expect(snapshot.findings[0]?.message).toContain('nano-v3');
    expect(snapshot.fixes(snapshot.findings[0]?.key ?? '')[0]?.edits[0]?.text).toContain('nano-v3');
  });

  it('finds nothing to say of a sketch without a manifest', () => {
    expect(bench.analyse({ 'sketch.ino': sketch }).findings).toEqual([]);
  });

  it.each([
    ['empty', ''],
    ['binary', '\u0000\uFFFD\u0001'.repeat(500)],
    ['half typed', sketch.slice(0, 70)],
    ['one line of five megabytes', `int a = 0${' + 1'.repeat(1_250_000)};`],
  ])('lives through a sketch that is %s', { timeout: 60_000 }, (_, text) => {
    const snapshot = bench.analyse({ 'sketch.ino': text, 'hardware.jsonc': manifest });
    expect(snapshot.build?.parts).toHaveLength(2);
  });
});

it('says of a binary file under a sketch’s name that it is none', () => {
  const snapshot = bench.analyse({ 'sketch.ino': 'PNG\u0000\u0001\u0002', 'hardware.jsonc': manifest });
  const told = snapshot.findings.find((finding) => finding.rule === 'sketch-limit');
  expect(told?.message).toContain('not text');
  expect(told?.severity).toBe('warning');
  expect(told?.span.file).toBe('sketch.ino');
});

describe('a half-typed manifest', () => {
  const analyseInTurn = (texts: readonly string[]) => {
    const analyser = createAnalyser(loadLibrary(`${root}/hardware-schemas`), () => undefined);
    const parsed = bench.parser.parse('sketch.ino', sketch.replace('beacon = 7', 'beacon = 9'));
    parsed.dispose();
    return texts.map((text) =>
      analyser
        .analyse({ sources: [parsed], manifest: { file: 'hardware.jsonc', text } })
        .findings.map(({ rule }) => rule),
    );
  };

  it('keeps the last good build for the sketch, and tells only what is wrong with its present text', () => {
    const broken = manifest.replace('"wires": [', '"wires": [ { "from": "D8", "to": ');
    const [whole, half, again] = analyseInTurn([manifest, broken, manifest]);
    expect(whole).toEqual(expect.arrayContaining(['unwired-pin', 'idle-wire']));
    expect(half).toContain('unwired-pin');
    expect(half).toContain('manifest-fault');
    // The idle wire's place has moved: it is not told until the file is whole again.
    expect(half).not.toContain('idle-wire');
    expect(again).toEqual(whole);
  });
});

it('keeps the sketch’s findings where one part of the manifest is wrong', () => {
  const fixture = readFixture(`
//- sketch.ino
void setup() { pinMode(30, OUTPUT); }
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "beacon": { "kind": "ledd" } }
}
`);
  const rules = bench.analyse(fixture.files).findings.map((finding) => finding.rule);
  expect(rules).toEqual(expect.arrayContaining(['no-such-pin', 'manifest-fault']));
});
