/** The sketch layer's facts against what the same sketch does on a simulated chip. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { type Analyser, createAnalyser, type Snapshot } from '../../../server/src/analysis';
import { loadLibrary, loadProject } from '../../../server/src/files';
import { createSketchParser } from '../../../server/src/sketch';
import { requireOracle } from '../oracle';
import { compareWithChip, type PinMap } from './compare';
import { firmwareToolsPresent, type SketchFile, type Target } from './compile-firmware';
import { type InputChange, runFirmware } from './run-firmware';

const ORACLE = 'AVR compiler, core and simulator';
const SCHEMAS = fileURLToPath(new URL('../../../hardware-schemas', import.meta.url));
const MINUTE = 60_000;
const NANO: Target = {
  mcu: 'atmega328p',
  variant: 'eightanaloginputs',
  clock: 16_000_000,
  board: 'AVR_NANO',
};
const IDLE: readonly SketchFile[] = [{ name: 'idle.ino', text: 'void setup() {}\nvoid loop() {}\n' }];

async function analyse(manifest: string, files: readonly SketchFile[], folder = '/build'): Promise<Snapshot> {
  const analyser: Analyser = createAnalyser(loadLibrary(SCHEMAS), () => undefined);
  const parser = await createSketchParser({ log: () => {} });
  const sources = files.map((file) => parser.parse(`${folder}/${file.name}`, file.text));
  try {
    return analyser.analyse({ manifest: { file: `${folder}/hardware.jsonc`, text: manifest }, sources });
  } finally {
    for (const source of sources) {
      source.dispose();
    }
  }
}

function pinMapOf(snapshot: Snapshot): PinMap {
  const board = snapshot.build?.board;
  if (board === undefined) {
    throw new Error('the manifest gives no board');
  }
  const ports = new Map<number, string>();
  for (const { number, port } of board.pins) {
    if (number !== undefined && port !== undefined) {
      ports.set(number, port);
    }
  }
  return { ports, interruptPins: board.platform.interruptPins };
}

/** Boards whose chip can be simulated. */
const targets: readonly {
  readonly title: string;
  readonly manifest: string;
  readonly target: Target & { supply: number };
}[] = [
  {
    title: 'ATmega328P at 5 V',
    manifest: '{ "format": 1, "board": "nano-v3" }',
    target: { ...NANO, supply: 5000 },
  },
  {
    title: 'ATmega32U4 at 3.3 V',
    manifest: '{ "format": 1, "board": "bare-32u4-3v3" }',
    target: { mcu: 'atmega32u4', variant: 'leonardo', clock: 8_000_000, board: 'AVR_LEONARDO', supply: 3300 },
  },
];

/** An input by the board's own name for the pin, so that one sketch serves every board. */
type BoardInput = { readonly atMillis: number; readonly pin: string } & (
  | { readonly level: 0 | 1 | 'free' }
  | { readonly millivolts: number }
);

function atChip(inputs: readonly BoardInput[], snapshot: Snapshot): readonly InputChange[] {
  return inputs.map((input) => {
    const pin = snapshot.build?.board.pins.find((each) => each.id === input.pin);
    if (pin?.port === undefined || ('millivolts' in input && pin.adc === undefined)) {
      throw new Error(`the board cannot take an input on ${input.pin}`);
    }
    return 'millivolts' in input
      ? { atMillis: input.atMillis, channel: pin.adc ?? 0, millivolts: input.millivolts }
      : { atMillis: input.atMillis, pin: pin.port, level: input.level };
  });
}

/** Sketches that reach all they do within a second, and what they need from outside for that. */
const sketches: readonly {
  readonly about: string;
  readonly text: string;
  readonly inputs?: readonly BoardInput[];
}[] = [
  {
    about: 'a macro, a constant, an enumeration and plain numbers',
    text: `#define HORN 8
const int lamp = 7;
enum { GATE = 6, DOOR };
void setup() { pinMode(HORN, OUTPUT); pinMode(lamp, OUTPUT); pinMode(GATE, OUTPUT); pinMode(2, INPUT_PULLUP); }
void loop() { digitalWrite(DOOR, !digitalRead(2)); tone(HORN, 440, 10); analogWrite(GATE, 128); delay(20); noTone(HORN); }
`,
  },
  {
    about: 'an array and the loops over it',
    text: `const byte row[] = {3, 5, 6, 9};
void setup() {
  for (unsigned i = 0; i < sizeof(row) / sizeof(row[0]); i++) { pinMode(row[i], OUTPUT); }
  for (int p = 10; p <= 12; ++p) pinMode(p, INPUT_PULLUP);
}
void loop() { for (byte pin : row) { digitalWrite(pin, HIGH); delay(5); digitalWrite(pin, LOW); } }
`,
  },
  {
    about: 'a pin that goes through two functions',
    text: `void drive(uint8_t pin, bool on) { digitalWrite(pin, on); }
void blink(int which) { drive(which + 4, true); delay(10); drive(which + 4, false); }
void setup() { pinMode(4, OUTPUT); pinMode(5, OUTPUT); }
void loop() { blink(0); blink(1); }
`,
  },
  {
    about: 'a branch that an input decides',
    inputs: [
      { atMillis: 300, pin: 'D2', level: 0 },
      { atMillis: 500, pin: 'D2', level: 'free' },
      { atMillis: 600, pin: 'A1', millivolts: 3000 },
    ],
    text: `void setup() { pinMode(2, INPUT_PULLUP); pinMode(13, OUTPUT); }
void loop() {
  if (digitalRead(2) == LOW) { pinMode(12, OUTPUT); digitalWrite(12, HIGH); } else { digitalWrite(13, HIGH); }
  if (analogRead(A1) > 500) analogWrite(11, 40);
}
`,
  },
  {
    about: 'an interrupt handler and a pull-up by a written level',
    inputs: [{ atMillis: 200, pin: 'D3', level: 0 }],
    text: `volatile bool hit;
void onHit() { digitalWrite(7, HIGH); hit = true; }
void setup() { pinMode(7, OUTPUT); digitalWrite(3, HIGH); attachInterrupt(digitalPinToInterrupt(3), onHit, FALLING); }
void loop() { if (hit) { digitalWrite(8, HIGH); } }
`,
  },
];

describe('the chip itself', () => {
  test('driven pins, pull-ups and calls of a small sketch, known by hand', {
    timeout: MINUTE,
  }, async (ctx) => {
    requireOracle(ctx, ORACLE, firmwareToolsPresent());
    const text = `#include <Servo.h>
Servo gate;
void setup() { gate.attach(9); pinMode(7, OUTPUT); pinMode(2, INPUT_PULLUP); }
void loop() { blink(); if (digitalRead(2) == LOW) { tone(4, 440, 20); } if (analogRead(A1) > 500) analogWrite(3, 99); }
void blink() { digitalWrite(7, HIGH); delay(10); digitalWrite(7, LOW); }
`;
    const inputs: readonly InputChange[] = [
      { atMillis: 200, pin: 'PD2', level: 0 },
      { atMillis: 300, channel: 1, millivolts: 4000 },
    ];
    const events = await runFirmware([{ name: 'a.ino', text }], { ...NANO, millis: 500, inputs });
    expect(events.end).toBe('run');
    expect(events.driven).toEqual(['PB1', 'PD3', 'PD4', 'PD7']);
    expect(events.pulledUp).toEqual(['PD2']);
    const calls = [...new Set(events.calls.map((call) => `${call.action} ${call.pin} ${call.value}`))];
    expect(calls.sort()).toEqual([
      'analog-read 15 0',
      'mode 2 2',
      'mode 7 1',
      'pwm 3 99',
      'read 2 0',
      'servo 9 0',
      'tone 4 255',
      'write 7 0',
      'write 7 1',
    ]);
    const millisOf = (action: string) =>
      Math.floor((events.calls.find((call) => call.action === action)?.cycle ?? 0) / 16_000);
    expect(millisOf('tone')).toBeGreaterThanOrEqual(200);
    expect(millisOf('tone')).toBeLessThan(220);
    expect(millisOf('pwm')).toBeGreaterThanOrEqual(300);
    // The lamp's own port bit follows its writes, ten milliseconds apart.
    const lamp = events.changes.filter((change) => change.pin === 'PD7' && change.register === 'port');
    expect(lamp.slice(0, 2).map((change) => change.value)).toEqual([1, 0]);
    expect(((lamp[1]?.cycle ?? 0) - (lamp[0]?.cycle ?? 0)) / 16_000).toBeCloseTo(10, 0);
  });

  test('what does not compile fails with the compiler in its words', { timeout: MINUTE }, async (ctx) => {
    requireOracle(ctx, ORACLE, firmwareToolsPresent());
    const files = [{ name: 'a.ino', text: 'void setup() { nowhere(); }\nvoid loop() {}\n' }];
    await expect(runFirmware(files, { ...NANO, millis: 10 })).rejects.toThrow(
      /a\.ino:1:\d+: error: .*nowhere/,
    );
  });
});

describe('facts against the chip', () => {
  test('the harbour model', { timeout: MINUTE }, async (ctx) => {
    requireOracle(ctx, ORACLE, firmwareToolsPresent());
    const project = loadProject(join(SCHEMAS, 'examples', 'harbour-model'));
    const files = project.sources.map(({ file, text }) => ({ name: file.split('/').at(-1) ?? '', text }));
    const manifest = readFileSync(join(SCHEMAS, 'examples', 'harbour-model', 'hardware.jsonc'), 'utf8');
    const snapshot = await analyse(manifest, files);
    const events = await runFirmware(files, {
      ...NANO,
      millis: 2500,
      inputs: [
        { atMillis: 400, channel: 0, millivolts: 4000 },
        { atMillis: 1400, channel: 0, millivolts: 500 },
      ],
    });
    const idle = await runFirmware(IDLE, { ...NANO, millis: 100 });
    const map = pinMapOf(snapshot);
    expect(events.end).toBe('run');
    expect(events.driven.length).toBeGreaterThan(0);
    expect(compareWithChip(snapshot.facts, events, idle, map)).toEqual({ missing: [], extra: [], wrong: [] });

    // The comparison must be able to fail: without the facts on one pin, the chip misses them.
    const blind = { ...snapshot.facts, uses: snapshot.facts.uses.filter((use) => use.action !== 'servo') };
    expect(compareWithChip(blind, events, idle, map).missing).toEqual(['drives PB1', 'calls servo on pin 9']);
  });

  test.for(targets.flatMap((target) => sketches.map((sketch) => ({ ...target, ...sketch }))))(
    '$title: $about',
    { timeout: MINUTE },
    async ({ manifest, target, text, inputs = [] }, ctx) => {
      requireOracle(ctx, ORACLE, firmwareToolsPresent());
      const files = [{ name: 'build.ino', text }];
      const snapshot = await analyse(manifest, files);
      const map = pinMapOf(snapshot);
      const events = await runFirmware(files, {
        ...target,
        millis: 1000,
        inputs: atChip(inputs, snapshot),
      });
      const idle = await runFirmware(IDLE, { ...target, millis: 100 });
      expect(compareWithChip(snapshot.facts, events, idle, map)).toEqual({
        missing: [],
        extra: [],
        wrong: [],
      });
    },
  );
});
