/** What a seed can add to a clean build beside its fault: lines of the sketch, and small parts with their wires. */
import { addPart, addWire } from './mutate';
import type { SeedEdit } from './seed';

export interface Lines {
  readonly top?: string;
  readonly setup?: string;
  readonly loop?: string;
}

/** Puts lines before setup(), at its beginning and at the beginning of loop(). */
export function code({ top, setup, loop }: Lines): SeedEdit[] {
  const edits: SeedEdit[] = [];
  if (setup !== undefined) edits.push({ find: 'void setup() {', put: `void setup() {\n  ${setup}` });
  if (top !== undefined) edits.push({ find: 'void setup() {', put: `${top}\n\nvoid setup() {` });
  if (loop !== undefined) edits.push({ find: 'void loop() {', put: `void loop() {\n  ${loop}` });
  return edits;
}

const purpose = 'x';

export function lampOn(pin: string, ground: string, value = '1k', id = 'extra'): SeedEdit[] {
  return [
    addPart(id, { kind: 'led', colour: 'red', purpose }),
    addPart(`R${id}`, { kind: 'resistor', value, purpose }),
    addWire({ path: [pin, `R${id}`, id, ground] }),
  ];
}

export function buttonOn(pin: string, far: string, id = 'knock'): SeedEdit[] {
  return [addPart(id, { kind: 'push-button', purpose }), addWire({ path: [pin, id, far] })];
}

export function knobOn(pin: string, rail: string, ground: string, id = 'dial'): SeedEdit[] {
  return [
    addPart(id, { kind: 'potentiometer', value: '10k', purpose }),
    addWire({ from: rail, to: `${id}.1` }),
    addWire({ from: pin, to: `${id}.wiper` }),
    addWire({ from: `${id}.2`, to: ground }),
  ];
}

/** A bulb of 60 ohm when hot from one end to another: 83 mA at 5 V. */
export function bulbBetween(plus: string, minus: string, hotOhms = '60 ohm', id = 'bulb'): SeedEdit[] {
  return [addPart(id, { kind: 'filament-lamp', hotOhms, purpose }), addWire({ path: [plus, id, minus] })];
}

export function adapter(
  id: string,
  volts: string,
  plus: string,
  minus: string,
  maxCurrent = '2 A',
): SeedEdit[] {
  return [
    addPart(id, { kind: 'power-adapter', volts, maxCurrent, purpose }),
    addWire({ from: `${id}.+`, to: plus }),
    addWire({ from: `${id}.-`, to: minus }),
  ];
}
