/** What happened to the pins in all runs of a sketch, one by one, and whether the sketch layer foresaw it. */
import type { PinAction, PinUse } from '../../../server/src/base/pin-use';
import type { Chip } from './chips';
import type { Run } from './run-sketch';

/**
 * `foreseen`: a use with this pin among its known ones. `said`: only a use whose pin is unknown, which says so.
 * `missed`: nothing.
 */
export type Verdict = 'foreseen' | 'said' | 'missed';

export interface JudgedEvent {
  /** `write 7 = 1`, `drives PD7 high`. */
  readonly what: string;
  readonly verdict: Verdict;
  /** A line it happened on, where it is a call. */
  readonly line?: string;
}

/** Calls whose value counts. */
const VALUED: ReadonlySet<PinAction> = new Set<PinAction>(['mode', 'write', 'pwm', 'tone']);
/** Calls that take their pins for themselves, with whatever direction and level they need. */
const TAKING: ReadonlySet<PinAction> = new Set<PinAction>(['bus', 'device', 'transfer', 'touch', 'dac']);
const DRIVING: ReadonlySet<PinAction> = new Set<PinAction>(['pwm', 'tone', 'servo']);

/**
 * Judges every event of the runs once; where an event is one of several values, by the value that fares worst.
 * @param idle States that the core brings about by itself.
 */
export function judgeEvents(
  uses: readonly PinUse[],
  runs: readonly Run[],
  chip: Chip,
  idle: ReadonlySet<string>,
): readonly JudgedEvent[] {
  const judged = new Map<string, JudgedEvent>();
  const seen = new Set<string>();
  const add = (what: string, verdict: Verdict, line?: string) => {
    const before = judged.get(what);
    if (before === undefined || WORSE.indexOf(verdict) > WORSE.indexOf(before.verdict)) {
      judged.set(what, { what, verdict, ...(line === undefined ? {} : { line }) });
    }
  };
  for (const run of runs) {
    for (const { action, pin, value, at } of run.calls) {
      const key = `${action} ${pin} ${value}`;
      if (!seen.has(key)) {
        seen.add(key);
        const line = at === undefined ? undefined : `${at.file}:${at.line}`;
        const number = action === 'interrupt' ? (chip.platform.interruptPins[pin] ?? pin) : pin;
        const claims = uses.filter((use) => use.action === action && takesValue(use, value));
        add(`${action} ${number}${wordFor(action, value)}`, judge(claims, [number]), line);
      }
    }
    for (const state of run.states) {
      if (!idle.has(state) && !seen.has(state)) {
        seen.add(state);
        const [what, verdict] = judgeState(state, uses, chip);
        if (what !== undefined) {
          add(what, verdict);
        }
      }
    }
    for (const compare of run.compares) {
      const pin = chip.platform.roles[compare];
      const claims = uses.filter(({ action }) => DRIVING.has(action));
      add(`timer output ${compare}`, judge(claims, pin === undefined ? [] : [pin]));
    }
    for (const port of run.lines) {
      const claims = uses.filter(({ action }) => action === 'interrupt');
      add(`interrupt line on ${port}`, judge(claims, numbersOf(port, chip)));
    }
  }
  return [...judged.values()];
}

const WORSE: readonly Verdict[] = ['foreseen', 'said', 'missed'];

/** A duty is one event whatever it is between nothing and full, or a fading lamp would outweigh all else. */
function wordFor(action: PinAction, value: number): string {
  if (action === 'pwm') {
    return value === 0 ? ' = 0' : value === 255 ? ' full' : ' in between';
  }
  return action === 'mode' || action === 'write' ? ` = ${value}` : '';
}

function numbersOf(port: string, chip: Chip): readonly number[] {
  return [...chip.ports].filter(([, other]) => other === port).map(([number]) => number);
}

function judgeState(
  state: string,
  uses: readonly PinUse[],
  chip: Chip,
): readonly [string | undefined, Verdict] {
  const [port = '', kind] = state.split(' ');
  const pins = numbersOf(port, chip);
  const drives = judge(uses.filter(drivesPin), pins);
  const raises = judge(uses.filter(raisesLevel), pins);
  if (kind === 'low') {
    return [`drives ${port} low`, drives];
  }
  if (kind === 'high') {
    // Two things are needed, a direction and a level.
    return [`drives ${port} high`, WORSE.indexOf(drives) > WORSE.indexOf(raises) ? drives : raises];
  }
  return kind === 'pull-up' ? [`pulls up ${port}`, raises] : [undefined, 'foreseen'];
}

/** @param pins All numbers of the pin; none: a pin that the board has no number for. */
function judge(claims: readonly PinUse[], pins: readonly number[]): Verdict {
  if (claims.some((use) => pins.some((pin) => holds(use, pin)))) {
    return 'foreseen';
  }
  return claims.some(isUnknown) ? 'said' : 'missed';
}

function isUnknown(use: PinUse): boolean {
  return use.pins.kind === 'unknown';
}

/** The core takes pins as bytes. */
export function holds(use: PinUse, pin: number): boolean {
  return use.pins.kind === 'known' && use.pins.values.some((one) => (one & 255) === (pin & 255));
}

function takesValue(use: PinUse, value: number): boolean {
  if (!VALUED.has(use.action) || use.value?.kind !== 'known') {
    return true;
  }
  return use.value.values.some((known) => recordedValue(use.action, known) === value);
}

/** How the recorder tells a value: modes and levels are bytes, duty and frequency stop at 255. */
export function recordedValue(action: PinAction, value: number): number {
  return action === 'mode' || action === 'write' ? value & 255 : Math.min(value & 0xffff, 255);
}

function drivesPin(use: PinUse): boolean {
  if (use.action === 'mode') {
    return use.modes === undefined || use.modes.length === 0 || use.modes.includes('output');
  }
  return DRIVING.has(use.action) || TAKING.has(use.action) || (use.modes ?? []).includes('output');
}

function raisesLevel(use: PinUse): boolean {
  if (use.action === 'write') {
    return use.value?.kind !== 'known' || use.value.values.some((value) => value !== 0);
  }
  if (use.action === 'mode') {
    return use.modes === undefined || use.modes.length === 0 || use.modes.includes('input-pullup');
  }
  return DRIVING.has(use.action) || TAKING.has(use.action) || (use.modes ?? []).includes('input-pullup');
}
