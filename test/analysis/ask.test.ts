/** An editor's questions over whole and half-typed manifests: completion, outline, references, renames, lenses, hints. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Snapshot } from '../../server/src/analysis';
import { applyEdits } from '../../server/src/base/span';
import { type Desk, openDesk } from './draft/desk';

const sketch = `#include <Servo.h>
Servo gate;
const int beacon = 7;
void setup() { gate.attach(9); pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); gate.write(90); }
`;
const manifest = `{
  "board": "nano-v3",
  "stock": { "resistors": ["330", "4k7"] },
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "330" }
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] },
    { "from": "beacon.cathode", "to": "GND" }
  ]
}
`;

let desk: Desk;
let snapshot: Snapshot;
beforeAll(async () => {
  desk = await openDesk();
  snapshot = desk.look(sketch, manifest);
});

/** Labels offered at the | of a text. */
function offered(text: string, name = 'hardware.jsonc'): readonly string[] {
  const offset = text.indexOf('|');
  const whole = text.replace('|', '');
  const look = name === 'sketch.ino' ? desk.look(whole, manifest) : desk.look(sketch, whole);
  return look.ask?.complete(name, offset).map(({ label }) => label) ?? [];
}

const at = (text: string, word: string, from = '') => text.indexOf(word, text.indexOf(from)) + 1;

describe('completion in the manifest', () => {
  test.each([
    ['keys', manifest.replace('"stock"', '"|stock"'), ['title', 'board', 'policy', 'wires']],
    ['boards', '{ "board": "|" }', ['nano-v3', 'uno-r3']],
    ['kinds', manifest.replace('"led"', '"|led"'), ['servo', 'push-button', 'led']],
    ['choices', manifest.replace('"green"', '"|"'), ['red', 'warm-white']],
    ['parameters of the kind', manifest.replace(', "colour": "green"', ', "|"'), ['forwardVolts', 'purpose']],
    ['stock', manifest.replace('"value": "330"', '"value": "|"'), ['330', '4.7k']],
    ['terminals', manifest.replace('"beacon.cathode"', '"|"'), ['beacon.anode', 'R1.1', 'D2']],
    ['colours', manifest.replace('"black"', '"|"'), ['black', 'violet']],
    [
      'rules',
      manifest.replace('"stock"', '"severity": { "|" },\n  "stock"'),
      ['lamp-unlimited', 'idle-wire'],
    ],
    [
      'half typed, names from before',
      `${manifest.slice(0, manifest.indexOf('"beacon.cathode"'))}"|`,
      ['beacon.anode', 'D2'],
    ],
  ])('%s', (_, text, wanted) => {
    desk.look(sketch, manifest);
    expect(offered(text)).toEqual(expect.arrayContaining(wanted));
  });

  test('free pins come before those in use, and a text with an open quote loses nothing behind it', () => {
    const text = manifest.replace('"beacon.cathode"', '"');
    const offset = text.indexOf('"from": "') + '"from": "'.length;
    const items = desk.look(sketch, text).ask?.complete('hardware.jsonc', offset) ?? [];
    const labels = items.map(({ label }) => label);
    expect(labels.indexOf('D2')).toBeLessThan(labels.indexOf('D7'));
    expect(items.every(({ start, end }) => start === offset - 1 && end === offset)).toBe(true);
  });

  test('runs as snippets', () => {
    const found =
      desk.look(sketch, manifest).ask?.complete('hardware.jsonc', manifest.indexOf('"wires": [') + 10) ?? [];
    expect(found[0]?.text.replaceAll('$', '%')).toBe(
      '{ "from": "%{1:D2}", "to": "%{2:GND}", "colour": "%{3:black}" }',
    );
  });
});

describe('both files', () => {
  test('pins in the sketch, with the part on them', () => {
    const labels = offered(sketch.replace('digitalWrite(beacon', 'digitalWrite(|beacon'), 'sketch.ino');
    expect(labels.slice(0, 1)).toEqual(['beacon']);
    expect(labels).toContain('A0');
    expect(offered(sketch.replace('void loop() {', 'void loop() { |'), 'sketch.ino')).toEqual([]);
  });

  test('references lead from the wire to the uses and back', () => {
    const spans = snapshot.ask?.references('hardware.jsonc', at(manifest, 'D7')) ?? [];
    expect(spans.map(({ file }) => file)).toEqual(['sketch.ino', 'sketch.ino', 'hardware.jsonc']);
    expect(snapshot.ask?.references('sketch.ino', at(sketch, 'beacon', 'digitalWrite'))).toEqual(spans);
  });

  test('a rename changes the key and every wire, and refuses names that are taken', () => {
    const offset = at(manifest, 'beacon');
    const edits = snapshot.ask?.rename('hardware.jsonc', offset, 'lantern');
    const text = applyEdits(manifest, Array.isArray(edits) ? edits : []);
    expect(text).toBe(manifest.replaceAll('beacon', 'lantern'));
    expect(snapshot.ask?.rename('hardware.jsonc', offset, 'R1')).toBe('There is a part "R1" already.');
    expect(snapshot.ask?.rename('hardware.jsonc', offset, 'D4')).toBe('"D4" is a pin of the board.');
    expect(snapshot.ask?.rename('sketch.ino', 30, 'x')).toBe('Only parts of the manifest can be renamed.');
  });

  test('the outline, the colours, the lenses and the hints', () => {
    expect(
      snapshot.ask?.outline().map(({ name, children }) => [name, children.map((child) => child.name)]),
    ).toEqual([
      ['parts', ['beacon', 'R1']],
      ['wires', ['D7 → R1.1 → R1.2 → beacon.anode → beacon.cathode → GND', 'beacon.cathode → GND']],
    ]);
    expect(snapshot.ask?.colours().map(({ colour }) => colour)).toEqual(['red', 'red', 'black']);
    expect(snapshot.ask?.lenses().map(({ text }) => text)[0]).toMatch(
      /^D7 · 2 uses in the sketch · at most \d+(\.\d+)? mA$/,
    );
    const hints = snapshot.ask?.hints('sketch.ino', 0, sketch.length) ?? [];
    expect(hints.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^beacon, \d.* mA$/),
      expect.stringMatching(/^beacon, \d.* mA$/),
    ]);
  });

  test('the list of pins ends with the free ones', () => {
    const pins = snapshot.ask?.pins() ?? [];
    expect(pins.slice(0, 2).map(({ pin, parts }) => [pin, parts])).toEqual([
      ['D7', ['R1']],
      ['D9', []],
    ]);
    expect(pins.at(-1)?.use).toBe('');
  });

  test('a library object tells its pins', () => {
    const hover = snapshot.hover('sketch.ino', at(sketch, 'gate', 'loop'));
    expect(hover?.markdown).toContain('an object of Servo');
    expect(hover?.markdown).toContain('D9: nothing is wired to it');
  });

  test('nothing points into a manifest that is half typed', () => {
    const half = desk.look(sketch, manifest.slice(0, -30));
    expect(half.ask?.outline()).toEqual([]);
    expect(
      half.ask
        ?.references('sketch.ino', at(sketch, 'beacon', 'digitalWrite'))
        .every(({ file }) => file === 'sketch.ino'),
    ).toBe(true);
    expect(half.ask?.hints('sketch.ino', 0, sketch.length)).toHaveLength(2);
    expect(half.ask?.rename('hardware.jsonc', at(manifest, 'beacon'), 'x')).toBe(
      'The manifest is half typed; mend it first.',
    );
  });
});
