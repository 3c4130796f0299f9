/**
 * Claims of certainty against the runs. "Every run reaches this" can only be tried on runs that got that far: a claim
 * about setup() is due once setup() came back, one about loop() or a handler once loop() came back DUE_ROUNDS times.
 */
import type { PinAction, PinUse } from '../../../server/src/base/pin-use';
import type { Chip } from './chips';
import type { Lines } from './lines';
import type { Run } from './run-sketch';

export interface FalseCertainty {
  readonly what: string;
  readonly script: Run['script'];
}

const DUE_ROUNDS = 3;

const RECORDED: ReadonlySet<PinAction> = new Set<PinAction>([
  ...(['mode', 'write', 'read', 'pwm', 'analog-read', 'tone', 'tone-off', 'interrupt', 'servo'] as const),
]);
/** Registers of a port, which no call stands behind. */
const REGISTER = /^(DDR|PORT|PIN|TCCR\d)[A-L]/;

/** Claims that a run which got far enough did not bear out. */
export function findFalseCertainties(
  uses: readonly PinUse[],
  runs: readonly Run[],
  chip: Chip,
  lines: Lines,
): readonly FalseCertainty[] {
  const found: FalseCertainty[] = [];
  for (const run of runs) {
    for (const use of uses) {
      if (!use.certain || use.pins.kind !== 'known' || !isDue(use, run)) {
        continue;
      }
      for (const pin of use.pins.values) {
        if (!happened(use, pin, run, chip, lines)) {
          found.push({
            what: `${use.call} of pin ${pin} at ${lines.nameOf(use.callSpan)}`,
            script: run.script,
          });
        }
      }
    }
  }
  return found;
}

function isDue(use: PinUse, run: Run): boolean {
  return use.phase === 'setup' ? run.setupDone : run.rounds >= DUE_ROUNDS;
}

function happened(use: PinUse, pin: number, run: Run, chip: Chip, lines: Lines): boolean {
  if (isRegisterUse(use)) {
    // A timer's register: its outputs that were connected.
    if (use.action === 'pwm') return run.compares.some((output) => chip.platform.roles[output] === pin);
    return registerShows(use, chip.ports.get(pin), run);
  }
  if (!RECORDED.has(use.action) || (use.action === 'servo' && !use.call.endsWith('attach'))) {
    // Nothing on the chip tells of it (a device's own library, a bus): neither borne out nor refuted.
    return true;
  }
  return run.calls.some((call) => {
    const number =
      call.action === 'interrupt' ? (chip.platform.interruptPins[call.pin] ?? call.pin) : call.pin;
    const same = call.action === use.action && (number & 255) === (pin & 255);
    return same && (call.at === undefined || lines.covers(use.callSpan, call.at));
  });
}

export function isRegisterUse(use: PinUse): boolean {
  return REGISTER.test(use.call);
}

/** States of a pin that a register's write leaves behind. */
function registerShows(use: PinUse, port: string | undefined, run: Run): boolean {
  if (port === undefined) {
    return false;
  }
  const was = (...states: readonly string[]) =>
    states.some((state) => run.states.includes(`${port} ${state}`));
  if (use.action === 'mode') {
    return (use.modes ?? []).every((mode) =>
      mode === 'output' ? was('low', 'high') : was('input', 'pull-up'),
    );
  }
  if (use.action === 'write' && use.value?.kind === 'known' && use.value.values.length === 1) {
    return use.value.values[0] === 0 ? was('input', 'low') : was('pull-up', 'high');
  }
  return true;
}
