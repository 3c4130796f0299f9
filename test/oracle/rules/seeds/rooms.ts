/** Builds with room for one part more: a free pin, a ground and an upper rail that another wire can share. */
import { addPart, addWire } from '../mutate';
import type { SeedEdit } from '../seed';

export interface Room {
  readonly build: string;
  /** A pin that nothing is wired to, and how the sketch names it. */
  readonly pin: string;
  readonly number: string;
  readonly ground: string;
  readonly rail: string;
}

const room = (build: string, pin: string, number: string, ground: string, rail: string): Room => ({
  ...{ build, pin, number, ground, rail },
});

export const FREE: readonly Room[] = [
  room('beacon-and-horn', 'D12', '12', 'beacon.cathode', '5V'),
  room('quay-lights', 'D12', '12', 'stop.cathode', '5V'),
  room('tide-column', 'D12', '12', 'float.2', 'float.1'),
  room('bell-buoy', 'D4', '4', 'Q1.emitter', 'striker.coil-1'),
  room('crane', 'D12', '12', 'stick.-', 'stick.+'),
  room('range-lights', 'D12', '12', 'front.cathode', '5V'),
  room('fog-choir', 'D4', '4', 'eye.-', 'eye.+'),
  room('boiler-watch', 'D12', '12', 'drum.-', 'drum.+'),
];

/** A pack of its own and a strip of LEDs of 800 mA on it, apart from all else. */
export function stripOnPack(capacity?: string, id = 'parade'): SeedEdit[] {
  return [
    addPart(`${id}Pack`, {
      ...{ kind: 'battery', volts: '12', spread: '10%', purpose: 'x' },
      ...(capacity !== undefined && { capacity }),
    }),
    addPart(id, { kind: 'led-strip', metres: 1, purpose: 'x' }),
    addWire({ from: `${id}Pack.+`, to: `${id}.+` }),
    addWire({ from: `${id}.-`, to: `${id}Pack.-` }),
  ];
}
