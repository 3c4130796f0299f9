/** The boards that sketches are run on, each as the simulator and as the sketch layer knows it. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LibraryFacts, Platform } from '../../../server/src/base/platform';
import { readBoard } from '../../../server/src/hardware';
import type { Target } from '../firmware/compile-firmware';
import { readMegaPlatform } from './mega-platform';

export type ChipName = 'uno' | 'mega' | 'leonardo';

export interface Chip {
  readonly name: ChipName;
  readonly target: Target;
  readonly platform: Platform;
  /** Pin number → port and bit, for all numbers that the core has for a pin. */
  readonly ports: ReadonlyMap<number, string>;
  /** Converter channels that inputs are played on. */
  readonly channels: number;
}

const TARGETS: Readonly<Record<ChipName, Target>> = {
  uno: { mcu: 'atmega328p', variant: 'standard', clock: 16_000_000, board: 'AVR_UNO' },
  mega: { mcu: 'atmega2560', variant: 'mega', clock: 16_000_000, board: 'AVR_MEGA2560' },
  // The library's board with this chip runs at 8 MHz.
  leonardo: { mcu: 'atmega32u4', variant: 'leonardo', clock: 8_000_000, board: 'AVR_LEONARDO' },
};

/** @param schemas The folder of the board library. @throws Error where a board of it cannot be read. */
export function loadChips(schemas: string): Readonly<Record<ChipName, Chip>> {
  const boards = join(schemas, 'boards');
  const find = (id: string) => {
    const file = join(boards, `${id}.json`);
    return existsSync(file) ? { file, text: readFileSync(file, 'utf8') } : undefined;
  };
  const platformOf = (id: string): Platform => {
    const source = find(id);
    const board = source && readBoard(source, find).value;
    if (board === undefined) {
      throw new Error(`The board library has no ${id} that can be read.`);
    }
    return board.platform;
  };
  const uno = platformOf('uno-r3');
  let mega: Chip | undefined;
  return {
    uno: chip('uno', uno, 6),
    // Only on demand, for it needs the compiler.
    get mega() {
      mega ??= chip('mega', readMegaPlatform(uno), 16);
      return mega;
    },
    leonardo: chip('leonardo', platformOf('bare-32u4-3v3'), 12),
  };
}

/** Second numbers of pins that are analog inputs too: A6 to A11 in the core's header for this chip. */
const SECOND_NUMBERS: Readonly<Record<ChipName, Readonly<Record<number, number>>>> = {
  uno: {},
  mega: {},
  leonardo: { 24: 4, 25: 6, 26: 8, 27: 9, 28: 10, 29: 12 },
};

function chip(name: ChipName, platform: Platform, channels: number): Chip {
  const ports = new Map(Object.entries(platform.ports).map(([port, pin]) => [pin, port]));
  for (const [second, first] of Object.entries(SECOND_NUMBERS[name])) {
    const port = ports.get(first) ?? ports.get(Number(second));
    if (port !== undefined) {
      ports.set(first, port);
      ports.set(Number(second), port);
    }
  }
  return { name, target: TARGETS[name], platform, ports, channels };
}

/** Facts of all firmware libraries. */
export function loadLibraries(schemas: string): readonly LibraryFacts[] {
  const folder = join(schemas, 'libraries');
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  return names.sort().map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as LibraryFacts);
}
