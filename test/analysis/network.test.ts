/** Networks of whole builds, solved: what flows where, by the figures of the parts and the board alone. */
import { beforeAll, expect, it } from 'vitest';
import type { Range } from '../../server/src/base/range';
import { openTestBench, type TestBench } from '../fixture/bench';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

/** States of the whole build by their words, with the figures of each region together. */
function solve(sketch: string, manifest: object) {
  const files = {
    'sketch.ino': sketch,
    'hardware.jsonc': JSON.stringify({ format: 1, board: 'uno-r3', ...manifest }),
  };
  const workings = bench.analyse(files).workings();
  if (!workings) throw new Error('no build could be read');
  return workings.regions.flatMap(({ states }) => states);
}

function amps(states: ReturnType<typeof solve>, words: string, id: string): Range {
  const found = states.find((state) => state.words === words && state.point.amps[id] !== undefined);
  if (!found)
    throw new Error(`no state "${words}" with ${id}: ${states.map((state) => state.words).join('; ')}`);
  return found.point.amps[id] as Range;
}

const blink = (pin: string, mode = 'OUTPUT') =>
  `void setup() { pinMode(${pin}, ${mode}); }\nvoid loop() { digitalWrite(${pin}, HIGH); delay(9); digitalWrite(${pin}, LOW); delay(9); }\n`;

it('gives a pin the resistance of the strength that the sketch chooses', () => {
  const manifest = {
    board: 'pico',
    parts: { R1: { kind: 'resistor', value: '100' } },
    wires: [{ path: ['GP7', 'R1', 'GND'] }],
  };
  const weak = amps(solve(blink('7'), manifest), 'GP7 high', 'pin:GP7').typ;
  const strong = amps(solve(blink('7', 'OUTPUT_12MA'), manifest), 'GP7 high', 'pin:GP7').typ;
  // 55 ohm inside at 4 mA; a third of that at 12 mA.
  expect(weak).toBeCloseTo(3.3 / 155, 4);
  expect(strong).toBeGreaterThan(weak * 1.2);
  expect(strong).toBeLessThan(3.3 / 100);
});

it('takes the strongest of several strengths of one pin', () => {
  const manifest = {
    board: 'pico',
    parts: { R1: { kind: 'resistor', value: '100' } },
    wires: [{ path: ['GP7', 'R1', 'GND'] }],
  };
  const both = `void setup() { pinMode(7, OUTPUT_2MA); pinMode(7, OUTPUT_12MA); digitalWrite(7, HIGH); }\nvoid loop() {}\n`;
  const strong = amps(solve(blink('7', 'OUTPUT_12MA'), manifest), 'GP7 high', 'pin:GP7').typ;
  expect(amps(solve(both, manifest), 'GP7 high', 'pin:GP7').typ).toBeCloseTo(strong, 6);
});

it('lets a pin rise and fall with the rail that feeds it, so that a high side stays off at every corner', () => {
  const states = solve(blink('9'), {
    parts: {
      Q1: { kind: 'pnp-transistor' },
      R1: { kind: 'resistor', value: '1k' },
      R2: { kind: 'resistor', value: '220' },
      beacon: { kind: 'led', colour: 'red' },
    },
    wires: [
      { path: ['D9', 'R1', 'Q1.base'] },
      { from: '5V', to: 'Q1.emitter' },
      { path: ['Q1.collector', 'R2', 'beacon', 'GND'] },
    ],
  });
  expect(amps(states, 'D9 high', 'beacon/lamp').max).toBeLessThan(1e-5);
  expect(amps(states, 'D9 low', 'beacon/lamp').min).toBeGreaterThan(5e-3);
});

it('moves the contacts of a relay with its coil, whatever switches that', () => {
  const states = solve(blink('9'), {
    parts: {
      pack: { kind: 'battery', volts: '5' },
      K1: { kind: 'relay', volts: '5' },
      Q1: { kind: 'npn-transistor' },
      R1: { kind: 'resistor', value: '330' },
      R2: { kind: 'resistor', value: '330' },
      beacon: { kind: 'led', colour: 'red' },
    },
    wires: [
      { path: ['D9', 'R1', 'Q1.base'] },
      { path: ['pack.-', 'Q1.emitter', 'GND'] },
      { path: ['pack.+', 'K1.coil-1'] },
      { path: ['K1.coil-2', 'Q1.collector'] },
      { from: 'K1.common', to: 'K1.coil-1' },
      { path: ['K1.no', 'R2', 'beacon', 'Q1.emitter'] },
    ],
  });
  expect(amps(states, 'D9 low', 'K1/coil').typ).toBeLessThan(1e-4);
  expect(amps(states, 'D9 low', 'beacon/lamp').typ).toBeLessThan(1e-5);
  expect(amps(states, 'D9 high', 'K1/coil').typ).toBeGreaterThan(0.03);
  expect(amps(states, 'D9 high', 'beacon/lamp').typ).toBeGreaterThan(5e-3);
});

it('looks at both positions of contacts whose coil is in another circuit', () => {
  const states = solve(blink('9'), {
    parts: {
      reed: { kind: 'relay', volts: '5', resistance: '500 ohm' },
      R2: { kind: 'resistor', value: '330' },
      beacon: { kind: 'led', colour: 'red' },
    },
    wires: [
      { path: ['D9', 'reed.coil-1'] },
      { path: ['reed.coil-2', 'GND'] },
      { from: '5V', to: 'reed.common' },
      { path: ['reed.no', 'R2', 'beacon', 'reed.coil-2'] },
    ],
  });
  expect(amps(states, 'reed open', 'beacon/lamp').typ).toBeLessThan(1e-5);
  expect(amps(states, 'reed closed', 'beacon/lamp').typ).toBeGreaterThan(5e-3);
});

it('draws the current of a load behind a transistor in the state that opens it, and none in the other', () => {
  const states = solve(blink('9'), {
    parts: {
      wall: { kind: 'power-adapter', volts: '12', maxCurrent: '2 A' },
      lamps: { kind: 'led-strip', metres: '1' },
      Q1: { kind: 'n-mosfet', type: 'irlz44n' },
      R1: { kind: 'resistor', value: '10k' },
    },
    wires: [
      { from: 'D9', to: 'Q1.gate' },
      { path: ['Q1.gate', 'R1', 'GND'] },
      { from: 'Q1.source', to: 'GND' },
      { from: 'wall.+', to: 'lamps.+' },
      { from: 'lamps.-', to: 'Q1.drain' },
      { from: 'wall.-', to: 'Q1.source' },
    ],
  });
  expect(amps(states, 'D9 high', 'lamps/lamps').typ).toBeCloseTo(0.8, 1);
  expect(Math.abs(amps(states, 'D9 low', 'lamps/lamps').max)).toBeLessThan(1e-5);
});

it('leaves a load that lies straight on a battery alone, whatever else a transistor switches there', () => {
  const states = solve(blink('9'), {
    parts: {
      wall: { kind: 'power-adapter', volts: '12', maxCurrent: '2 A' },
      lamps: { kind: 'led-strip', metres: '1' },
      lock: { kind: 'solenoid', volts: '12' },
      catch: { kind: 'diode' },
      Q1: { kind: 'n-mosfet', type: 'irlz44n' },
      R1: { kind: 'resistor', value: '10k' },
    },
    wires: [
      { from: 'D9', to: 'Q1.gate' },
      { path: ['Q1.gate', 'R1', 'GND'] },
      { from: 'Q1.source', to: 'GND' },
      { from: 'wall.-', to: 'Q1.source' },
      { from: 'wall.+', to: 'lamps.+' },
      { from: 'lamps.-', to: 'wall.-' },
      { path: ['wall.+', 'lock', 'Q1.drain'] },
      { path: ['lock.2', 'catch', 'lock.1'] },
    ],
  });
  for (const words of ['D9 high', 'D9 low']) {
    expect(amps(states, words, 'lamps/lamps').typ).toBeCloseTo(0.8, 6);
  }
});

it('lets a Zener diode hold a voltage', () => {
  const states = solve('void setup() {}\nvoid loop() { analogRead(A0); }\n', {
    parts: {
      wall: { kind: 'power-adapter', volts: '12', maxCurrent: '1 A' },
      hold: { kind: 'zener-diode', volts: '4.7 V' },
      R1: { kind: 'resistor', value: '1k' },
    },
    wires: [
      { from: 'wall.-', to: 'GND' },
      { path: ['wall.+', 'R1', 'hold.cathode'] },
      { from: 'hold.cathode', to: 'A0' },
      { from: 'hold.anode', to: 'wall.-' },
    ],
  });
  const volts = states.map(({ point }) => point.nodes.A0 ?? point.nodes['hold.cathode']).find(Boolean);
  expect(volts?.typ).toBeGreaterThan(4.4);
  expect(volts?.typ).toBeLessThan(5.1);
});
