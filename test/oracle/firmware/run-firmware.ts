/** A firmware on the simulated chip: in go inputs over time, out come the changes of its pins and the recorded calls. */
import { execFile } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import type { PinAction } from '../../../server/src/base/pin-use';
import { compileFirmware, compileRunner, type SketchFile, type Target } from './compile-firmware';

const execute = promisify(execFile);

/** Something that happens to the chip from outside. */
export type InputChange =
  | { readonly atMillis: number; readonly pin: string; readonly level: 0 | 1 | 'free' }
  | { readonly atMillis: number; readonly channel: number; readonly millivolts: number };

export interface RunOptions extends Target {
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
}

/** What one run did. */
export interface PinEvents {
  readonly changes: readonly RegisterChange[];
  readonly calls: readonly RecordedCall[];
  /** Pins the chip drove at any time, sorted. */
  readonly driven: readonly string[];
  /** Pins that had their pull-up on at any time while nothing drove them, sorted. */
  readonly pulledUp: readonly string[];
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
  const runner = await compileRunner();
  const firmware = await compileFirmware(files, options);
  try {
    const inputs = join(dirname(firmware.elf), 'inputs.txt');
    writeFileSync(inputs, writeInputs(options.inputs ?? []));
    const { mcu, clock, supply = 5000, millis } = options;
    const { stdout } = await execute(
      runner,
      [firmware.elf, mcu, String(clock), String(supply), String(millis), inputs],
      { maxBuffer: 1 << 28 },
    );
    return readEvents(stdout);
  } finally {
    firmware.dispose();
  }
}

function writeInputs(inputs: readonly InputChange[]): string {
  const ordered = [...inputs].sort((a, b) => a.atMillis - b.atMillis);
  const lines = ordered.map((input) =>
    'pin' in input
      ? `${input.atMillis} pin ${input.pin} ${input.level}\n`
      : `${input.atMillis} adc ${input.channel} ${input.millivolts}\n`,
  );
  return lines.join('');
}

/** Reads the runner's lines. @throws Error where it did not come to its end. */
export function readEvents(output: string): PinEvents {
  const changes: RegisterChange[] = [];
  const calls: RecordedCall[] = [];
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
        calls.push({ cycle, action, pin: Number(rest[1]), value: Number(rest[2]) });
      }
    } else if (kind === 'end' && (rest[0] === 'run' || rest[0] === 'done' || rest[0] === 'crashed')) {
      end = { cycles: cycle, state: rest[0] };
    }
  }
  if (end === undefined) {
    throw new Error(`The simulator did not come to its end:\n${output.slice(-2000)}`);
  }
  return { changes, calls, ...levelsOf(changes), cycles: end.cycles, end: end.state };
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
