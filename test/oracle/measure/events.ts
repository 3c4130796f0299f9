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
 * Judges every event of the runs once.
 * @param idle States that the core brings about by itself.
 */
export function judgeEvents(
  uses: readonly PinUse[],
  runs: readonly Run[],
  chip: Chip,
  idle: ReadonlySet<string>,
): readonly JudgedEvent[] {
  const judged = new Map<string, JudgedEvent>();
  const add = (what: string, claims: readonly PinUse[], pin: number | undefined, line?: string) => {
    if (!judged.has(what)) {
      const verdict = judge(claims, pin);
      judged.set(what, { what, verdict, ...(line === undefined ? {} : { line }) });
    }
  };
  for (const run of runs) {
    for (const { action, pin, value, at } of run.calls) {
      const line = at === undefined ? undefined : `${at.file}:${at.line}`;
      const number = action === 'interrupt' ? (chip.platform.interruptPins[pin] ?? pin) : pin;
      const what = VALUED.has(action) ? `${action} ${number} = ${value}` : `${action} ${number}`;
      const claims = uses.filter((use) => use.action === action && takesValue(use, value));
      add(what, claims, number, line);
    }
    for (const state of run.states) {
      if (!idle.has(state)) {
        judgeState(state, uses, chip, add);
      }
    }
    for (const compare of run.compares) {
      const pin = chip.platform.roles[compare];
      add(
        `timer output ${compare}`,
        uses.filter(({ action }) => DRIVING.has(action)),
        pin,
      );
    }
    for (const port of run.lines) {
      const claims = uses.filter(({ action }) => action === 'interrupt');
      add(`interrupt line on ${port}`, claims, chip.platform.ports[port]);
    }
  }
  return [...judged.values()];
}

type Add = (what: string, claims: readonly PinUse[], pin: number | undefined, line?: string) => void;

function judgeState(state: string, uses: readonly PinUse[], chip: Chip, add: Add): void {
  const [port = '', kind] = state.split(' ');
  const pin = chip.platform.ports[port];
  const drives = uses.filter(drivesPin);
  const raises = uses.filter(raisesLevel);
  if (kind === 'low') {
    add(`drives ${port} low`, drives, pin);
  } else if (kind === 'high') {
    // Two things are needed, a direction and a level; the worse of the two verdicts counts.
    const level = judge(raises, pin);
    add(
      `drives ${port} high`,
      level === 'foreseen' ? drives : level === 'said' ? drives.filter(isUnknown) : [],
      pin,
    );
  } else if (kind === 'pull-up') {
    add(`pulls up ${port}`, raises, pin);
  }
}

function judge(claims: readonly PinUse[], pin: number | undefined): Verdict {
  if (pin !== undefined && claims.some((use) => holds(use, pin))) {
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
