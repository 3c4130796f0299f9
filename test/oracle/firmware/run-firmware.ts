/** A firmware on the simulated chip: in go inputs over time, out come the changes of its pins and the recorded calls. */
import { execFile } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { promisify } from 'node:util';
import type { PinAction } from '../../../server/src/base/pin-use';
import {
  type CompileOptions,
  compileFirmware,
  compileRunner,
  type SketchFile,
  type Target,
} from './compile-firmware';

const execute = promisify(execFile);

/** Something that happens to the chip from outside. */
export type InputChange =
  | { readonly atMillis: number; readonly pin: string; readonly level: 0 | 1 | 'free' }
  | { readonly atMillis: number; readonly channel: number; readonly millivolts: number }
  /** A byte arrives at the first serial port. */
  | { readonly atMillis: number; readonly byte: number };

export interface RunOptions extends Target, CompileOptions {
  /** Simulated time, milliseconds. */
  readonly millis: number;
  /** Supply, millivolts; 5,000 where absent. */
  readonly supply?: number;
  readonly inputs?: readonly InputChange[];
}

/** A bit of a register changed. `pin` is port and bit: `PD7`. */
export interface RegisterChange {
  readonly cycle: number;
  readonly register: 'ddr' | 'port';
  readonly pin: string;
  readonly value: 0 | 1;
}

/** A call of the sketch as it happened. `pin` counts as the core does (for `interrupt` it is the line). */
export interface RecordedCall {
  readonly cycle: number;
  readonly action: PinAction;
  readonly pin: number;
  /** Mode, level, duty or frequency, 255 at most. */
  readonly value: number;
  /** The line the call stands in, where the compiler's line table knows it. */
  readonly at?: { readonly file: string; readonly line: number };
}

/** What one run did. */
export interface PinEvents {
  readonly changes: readonly RegisterChange[];
  readonly calls: readonly RecordedCall[];
  /** Pins the chip drove at any time, sorted. */
  readonly driven: readonly string[];
  /** Pins that had their pull-up on at any time while nothing drove them, sorted. */
  readonly pulledUp: readonly string[];
  /** States a pin was in at any time: `PD7 high`. */
  readonly states: readonly string[];
  /** Compare outputs that a timer drove at any time: `timer2.b`. */
  readonly compares: readonly string[];
  /** Pins whose own external interrupt line was enabled at any time. */
  readonly lines: readonly string[];
  readonly setupDone: boolean;
  /** How often loop() came back. */
  readonly rounds: number;
  /** Cycles run. */
  readonly cycles: number;
  /** `run`: until the time was over; `done`: asleep for ever; `crashed`. */
  readonly end: 'run' | 'done' | 'crashed';
}

/** Numbers of chip/recorder.c. */
const ACTIONS: readonly (PinAction | undefined)[] = [
  undefined,
  'mode',
  'write',
  'read',
  'pwm',
  'analog-read',
  'tone',
  'tone-off',
  'interrupt',
  'servo',
];

/**
 * Compiles a sketch, runs it and tells what it did to its pins.
 * @throws Error with the compiler's or the simulator's output where either fails.
 */
export async function runFirmware(files: readonly SketchFile[], options: RunOptions): Promise<PinEvents> {
  const [events] = await runFirmwareOften(files, options, [options]);
  if (events === undefined) {
    throw new Error('The sketch was not run.');
  }
  return events;
}

/** What may differ between two runs of one firmware. */
export interface RunConditions extends Pick<RunOptions, 'millis' | 'supply' | 'inputs'> {
  /** Time without anything new after which a run is given up, milliseconds; never where absent. */
  readonly quietMillis?: number;
}

/**
 * Compiles a sketch once and runs it under several conditions, one after the other.
 * @throws Error with the compiler's or the simulator's output where either fails.
 */
export async function runFirmwareOften(
  files: readonly SketchFile[],
  target: Target & CompileOptions,
  conditions: readonly RunConditions[],
): Promise<readonly PinEvents[]> {
  const runner = await compileRunner();
  const firmware = await compileFirmware(files, target, target);
  const places = new Map<number, RecordedCall['at']>();
  try {
    const all: PinEvents[] = [];
    for (const { millis, supply = 5000, inputs = [], quietMillis = 0 } of conditions) {
      const script = join(dirname(firmware.elf), 'inputs.txt');
      writeFileSync(script, writeInputs(inputs));
      const { stdout } = await execute(
        runner,
        [
          firmware.elf,
          target.mcu,
          String(target.clock),
          String(supply),
          String(millis),
          String(quietMillis),
          script,
        ],
        { maxBuffer: 1 << 28 },
      );
      await findPlaces(firmware.elf, stdout, places);
      all.push(readEvents(stdout, places));
    }
    return all;
  } finally {
    firmware.dispose();
  }
}

/** Looks up the lines of places that were not met yet, all in one go. */
async function findPlaces(
  elf: string,
  output: string,
  places: Map<number, RecordedCall['at']>,
): Promise<void> {
  const found = new Set(
    [...output.matchAll(/^@ \d+ call \d+ \d+ \d+ (\d+)$/gm)].map(([, place]) => Number(place)),
  );
  const fresh = [...found].filter((place) => !places.has(place));
  if (fresh.length === 0) {
    return;
  }
  // A place is the word behind the call: one byte back lies within the call itself.
  const addresses = fresh.map((place) => `0x${(place * 2 - 1).toString(16)}`);
  const { stdout } = await execute('avr-addr2line', ['-e', elf, ...addresses], { maxBuffer: 1 << 24 });
  for (const [index, line] of stdout.trimEnd().split('\n').entries()) {
    const [, file, number] = /^(.*):(\d+)/.exec(line) ?? [];
    const at =
      file === undefined || file === '??' ? undefined : { file: basename(file), line: Number(number) };
    places.set(fresh[index] ?? 0, at);
  }
}

function writeInputs(inputs: readonly InputChange[]): string {
  const ordered = [...inputs].sort((a, b) => a.atMillis - b.atMillis);
  const lines = ordered.map((input) => {
    if ('pin' in input) {
      return `${input.atMillis} pin ${input.pin} ${input.level}\n`;
    }
    return 'byte' in input
      ? `${input.atMillis} serial ${input.byte} 0\n`
      : `${input.atMillis} adc ${input.channel} ${input.millivolts}\n`;
  });
  return lines.join('');
}

/** Reads the runner's lines. @throws Error where it did not come to its end. */
export function readEvents(output: string, places: ReadonlyMap<number, RecordedCall['at']>): PinEvents {
  const changes: RegisterChange[] = [];
  const calls: RecordedCall[] = [];
  const states: string[] = [];
  const compares: string[] = [];
  const lines: string[] = [];
  let setupDone = false;
  let rounds = 0;
  let end: { readonly cycles: number; readonly state: PinEvents['end'] } | undefined;
  for (const line of output.split('\n')) {
    const [mark, number = '', kind = '', ...rest] = line.split(' ');
    const cycle = Number(number);
    if (mark !== '@') {
      continue;
    }
    if (kind === 'ddr' || kind === 'port') {
      changes.push({ cycle, register: kind, pin: rest[0] ?? '', value: rest[1] === '1' ? 1 : 0 });
    } else if (kind === 'call') {
      const action = ACTIONS[Number(rest[0])];
      if (action !== undefined) {
        const at = places.get(Number(rest[3]));
        const call = { cycle, action, pin: Number(rest[1]), value: Number(rest[2]) };
        calls.push(at === undefined ? call : { ...call, at });
      }
    } else if (kind === 'state') {
      states.push(rest.join(' '));
    } else if (kind === 'compare') {
      compares.push(rest[0] ?? '');
    } else if (kind === 'line') {
      lines.push(rest[0] ?? '');
    } else if (kind === 'setup') {
      setupDone = true;
    } else if (kind === 'loop') {
      rounds = Number(rest[0]);
    } else if (kind === 'end' && (rest[0] === 'run' || rest[0] === 'done' || rest[0] === 'crashed')) {
      end = { cycles: cycle, state: rest[0] };
    }
  }
  if (end === undefined) {
    throw new Error(`The simulator did not come to its end:\n${output.slice(-2000)}`);
  }
  return {
    ...{ changes, calls, ...levelsOf(changes), states, compares, lines },
    ...{ setupDone, rounds, cycles: end.cycles, end: end.state },
  };
}

function levelsOf(changes: readonly RegisterChange[]): Pick<PinEvents, 'driven' | 'pulledUp'> {
  const driven = new Set<string>();
  const pulledUp = new Set<string>();
  const now = { ddr: new Set<string>(), port: new Set<string>() };
  for (const [index, { cycle, register, pin, value }] of changes.entries()) {
    if (value === 1) {
      now[register].add(pin);
    } else {
      now[register].delete(pin);
    }
    if (now.ddr.has(pin)) {
      driven.add(pin);
    } else if (now.port.has(pin) && staysFor(changes, index, pin, cycle)) {
      pulledUp.add(pin);
    }
  }
  return { driven: [...driven].sort(), pulledUp: [...pulledUp].sort() };
}

/** Cycles within which the core may pass through "input with pull-up" on its way to something else. */
const PASSING = 200;

function staysFor(changes: readonly RegisterChange[], index: number, pin: string, cycle: number): boolean {
  const next = changes.slice(index + 1).find((change) => change.pin === pin);
  return next === undefined || next.cycle - cycle > PASSING;
}
