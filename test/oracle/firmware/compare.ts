/**
 * The sketch layer's facts against a run on the chip, in sentences. The chip is right: what it did and the facts do
 * not hold is missing; what the facts hold and the chip did not do is extra, and that is a fault only where the facts
 * call it certain or the run was made to reach everything.
 */
import type { PinAction, PinUse, SketchFacts } from '../../../server/src/base/pin-use';
import type { PinEvents } from './run-firmware';

/** What the board means by its numbers. */
export interface PinMap {
  /** Pin number → port and bit. */
  readonly ports: ReadonlyMap<number, string>;
  /** Interrupt line → pin number. */
  readonly interruptPins: Readonly<Record<number, number>>;
}

export interface Comparison {
  /** The chip did it, the facts do not say it. */
  readonly missing: readonly string[];
  /** The facts say it, the chip did not do it. */
  readonly extra: readonly string[];
  /** Those of `extra` that the facts call certain. */
  readonly wrong: readonly string[];
}

/** A pin as far as the facts tell, and whether every run gets there. */
type Claims = ReadonlyMap<string, { readonly certain: boolean }>;

/**
 * Compares.
 * @param events A run of the sketch.
 * @param idle A run of an empty sketch on the same target: what the core itself does to pins.
 */
export function compareWithChip(
  facts: SketchFacts,
  events: PinEvents,
  idle: PinEvents,
  map: PinMap,
): Comparison {
  const portOf = (pin: number) => map.ports.get(pin) ?? `pin ${pin}, which the board does not have`;
  const own = (pins: readonly string[], core: readonly string[]) => pins.filter((pin) => !core.includes(pin));
  const missing: string[] = [];
  const extra: string[] = [];
  const wrong: string[] = [];
  const compareClaims = (what: string, done: readonly string[], claims: Claims, excused: boolean) => {
    for (const each of done) {
      if (!claims.has(each) && !excused) {
        missing.push(`${what} ${each}`);
      }
    }
    for (const [each, { certain }] of claims) {
      if (!done.includes(each)) {
        extra.push(`${what} ${each}`);
        if (certain) {
          wrong.push(`${what} ${each}`);
        }
      }
    }
  };
  const drives = facts.uses.filter((use) => isDriving(use));
  compareClaims(
    'drives',
    own(events.driven, idle.driven),
    claimsOf(drives, portOf, isCertainLevel),
    drives.some((use) => use.pins.kind === 'unknown'),
  );
  const pulls = facts.uses.filter((use) => isPulling(use, drives));
  compareClaims(
    'pulls up',
    own(events.pulledUp, idle.pulledUp),
    claimsOf(pulls, portOf, isCertainLevel),
    pulls.some((use) => use.pins.kind === 'unknown'),
  );
  for (const action of ACTIONS) {
    const uses = facts.uses.filter((use) => use.action === action);
    const unknown = uses.some((use) => use.pins.kind === 'unknown');
    const calls = events.calls.filter((call) => call.action === action);
    const pinOf = (call: { readonly pin: number }) =>
      action === 'interrupt' ? (map.interruptPins[call.pin] ?? call.pin) : call.pin;
    const pins = [...new Set(calls.map((call) => String(pinOf(call))))];
    compareClaims(
      `calls ${action} on pin`,
      pins,
      claimsOf(uses, String, (use) => use.certain),
      unknown,
    );
    if (HAS_VALUE.has(action)) {
      missing.push(...unexpectedValues(action, uses, calls));
    }
  }
  return { missing, extra, wrong };
}

const ACTIONS: readonly PinAction[] = [
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
const HAS_VALUE: ReadonlySet<PinAction> = new Set<PinAction>(['mode', 'write', 'pwm', 'tone']);
/** The recorder passes one byte. */
const LARGEST_VALUE = 255;

function isDriving(use: PinUse): boolean {
  return (
    use.action === 'pwm' ||
    use.action === 'tone' ||
    use.action === 'servo' ||
    (use.action === 'mode' && (use.modes ?? []).includes('output'))
  );
}

/** A pull-up by its mode, or by a high level written to a pin that nothing has made an output yet. */
function isPulling(use: PinUse, drives: readonly PinUse[]): boolean {
  if (use.action === 'mode') {
    return (use.modes ?? []).includes('input-pullup');
  }
  if (
    use.action !== 'write' ||
    (use.value?.kind === 'known' && !use.value.values.some((value) => value !== 0))
  ) {
    return false;
  }
  return !drives.some(
    (drive) =>
      drive.order < use.order &&
      (drive.pins.kind === 'unknown' ||
        use.pins.kind === 'unknown' ||
        sharesPin(drive.pins.values, use.pins.values)),
  );
}

function sharesPin(some: readonly number[], others: readonly number[]): boolean {
  return some.some((pin) => others.includes(pin));
}

/** A mode out of several is not certain to be this one, nor is a level. */
function isCertainLevel(use: PinUse): boolean {
  return use.certain && (use.modes?.length ?? 1) <= 1 && use.action !== 'write';
}

function claimsOf(
  uses: readonly PinUse[],
  nameOf: (pin: number) => string,
  certainOf: (use: PinUse) => boolean,
): Claims {
  const claims = new Map<string, { certain: boolean }>();
  for (const use of uses) {
    for (const pin of use.pins.kind === 'known' ? use.pins.values : []) {
      const name = nameOf(pin);
      claims.set(name, { certain: certainOf(use) || claims.get(name)?.certain === true });
    }
  }
  return claims;
}

function unexpectedValues(
  action: PinAction,
  uses: readonly PinUse[],
  calls: PinEvents['calls'],
): readonly string[] {
  const unexpected = new Set<string>();
  for (const { pin, value } of calls) {
    const some = uses.filter((use) => use.pins.kind === 'unknown' || use.pins.values.includes(pin));
    const fits = some.some(
      (use) =>
        use.value?.kind !== 'known' ||
        use.value.values.some((known) => Math.min(known, LARGEST_VALUE) === value),
    );
    // A pin that no use has is told elsewhere.
    if (some.length > 0 && !fits) {
      unexpected.add(`calls ${action} on pin ${pin} with ${value}`);
    }
  }
  return [...unexpected];
}
