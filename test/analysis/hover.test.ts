/** What a hover says, by cursor. The sums are those anybody in the trade does by head, then the full ones. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { openTestBench, root, type TestBench } from '../fixture/bench';
import { readFixture } from '../fixture/read-fixture';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

function hoverAt(build: string): string {
  const fixture = readFixture(build);
  if (!fixture.cursor) throw new Error('the fixture has no cursor');
  const snapshot = bench.analyse(fixture.files);
  return snapshot.hover(fixture.cursor.file, fixture.cursor.start)?.markdown ?? '';
}

const quayBoard = readFileSync(join(root, 'hardware-schemas/examples/quay-lamp/quay-board.json'), 'utf8');

/** A lamp with 470 ohm on a 3.3 V board declared as a user declares his own. */
const quay = (sketch: string, manifest = '"D10"') => `
//- sketch.ino
${sketch}
//- quay-board.json
${quayBoard}
//- hardware.jsonc
{
  "format": 1,
  "board": "./quay-board.json",
  "parts": {
    "quayLamp": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "470" }
  },
  "wires": [{ "path": [${manifest}, "R1", "quayLamp", "GND"], "colours": ["red", "white", "black"] }]
}
`;
const blink = 'void setup() { pinMode(10, OUTPUT); }\nvoid loop() { digitalWrite(10, HIGH); }';

describe('a pin in the sketch', () => {
  const text = () => hoverAt(quay(blink.replace('digitalWrite(10', 'digitalWrite($010')));

  it('names the whole run to the rail, with the colours of the wires and the bands of the resistor', () => {
    // 470 ohm is yellow, violet, brown: IEC 60062. The fourth band is the stock's 5 %.
    expect(text()).toContain(
      '**D10** —red→ **R1** (resistor, 470 ohm (yellow, violet, brown, gold)) —white→ **quayLamp** ' +
        '(LED, red; in at anode, out at cathode) —black→ **GND** (north row, 2nd from the USB end)',
    );
  });

  it('does the quick sum and the full one', () => {
    // Common practice: 3.3 V over 470 ohm with the lamp's drop neglected is 7.0 mA.
    expect(text()).toContain('3.3 V / 470 ohm = 7.0 mA with the lamp’s drop neglected');
    expect(text()).toContain('(3.3 V − 2.0 V) / 470 ohm = 2.8 mA');
    const full = /Current: ([\d.]+) \/ ([\d.]+) \/ ([\d.]+) mA \(min \/ typ \/ max\), D10 high/.exec(text());
    const [min, typ, max] = (full ?? []).slice(1).map(Number);
    // The lamp's drop, the pin's resistance and the tolerances bring it below the quick sum, and spread it.
    expect(typ).toBeGreaterThan(2.4);
    expect(typ).toBeLessThan(3.2);
    expect(min).toBeLessThan(typ ?? 0);
    expect(max).toBeGreaterThan(typ ?? 0);
  });

  it('compares with the limits and says where the pin is', () => {
    expect(text()).toContain('Limits of the pin: 10 mA recommended, 40 mA absolute.');
    expect(text()).toContain('Where: D10, south row, 6th from the USB end.');
  });
});

it('explains a constant where it is defined', () => {
  const text = hoverAt(quay(`const int l$0amp = 10;\n${blink.replaceAll('10', 'lamp')}`));
  expect(text).toContain('**R1**');
});

it('explains a macro at its use, with how the number came about', () => {
  const text = hoverAt(quay(`#define LAMP 10\nvoid setup() { pinMode(LA$0MP, OUTPUT); }\nvoid loop() {}`));
  expect(text).toMatch(/^10, from `LAMP`, line 1/);
});

it('says that a pin could not be found out', () => {
  const text = hoverAt(quay('void setup() {}\nvoid loop() { digitalWrite(Serial.re$0ad(), HIGH); }'));
  expect(text).toContain('could not be found out');
});

it('explains a wire’s end, a part and a key in the manifest', () => {
  expect(hoverAt(quay(blink, '"D$010"'))).toContain('**quayLamp**');
  expect(hoverAt(quay(blink).replace('"quayLamp": {', '"quay$0Lamp": {'))).toContain('flat side');
  expect(hoverAt(quay(blink).replace('"colours"', '"col$0ours"')).length).toBeGreaterThan(20);
  expect(hoverAt(quay(blink).replace('"colour": "red"', '"col$0our": "red"'))).toContain('forward voltage');
});

it('tells what a reset button does to its line', () => {
  const text = hoverAt(`
//- sketch.ino
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "restart": { "kind": "push-button" } },
  "wires": [{ "path": ["R$0ST", "restart", "GND"] }]
}
`);
  expect(text).toMatch(
    /Voltage: 5.0 V with restart open; [\d.]+ .?V with restart closed\. Below 500 mV the chip is in reset\./,
  );
});

it('lets no name become markup or a command', () => {
  const text = hoverAt(
    quay(blink, '"D$010"')
      .replaceAll('quayLamp', '[x](command:y)')
      .replace('"colour": "red"', '"colour": "red", "purpose": "<b>`$(zap)"'),
  );
  expect(text).not.toMatch(/(?<!\\)\[x(?<!\\)\]\(/);
  const part = hoverAt(
    quay(blink)
      .replaceAll('quayLamp', 'l')
      .replace('"l": {', '"l$0": {')
      .replace('"red" }', '"red", "purpose": "<b>`$(zap)" }'),
  );
  expect(part).toContain('&lt;b&gt;\\`\\$(zap)');
});
