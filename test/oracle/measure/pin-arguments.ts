/** How well the pin arguments of a sketch are resolved: one count for each place in the text, over all call paths. */
import type { PinUse } from '../../../server/src/base/pin-use';
import { isRegisterUse } from './certainty';
import type { Chip } from './chips';
import type { Lines } from './lines';
import type { Run } from './run-sketch';

export interface ArgumentCounts {
  readonly exact: number;
  readonly set: number;
  readonly none: number;
}

export interface PinArgument {
  readonly where: string;
  readonly verdict: keyof ArgumentCounts;
  readonly pins?: readonly number[];
}

interface Group {
  readonly uses: PinUse[];
}

/**
 * Judges each argument. Exact: one pin; or one on each call path; or several that are all certain; or several, and the
 * runs took all of them. A place that a run came through and the layer has no use for is not resolved.
 */
export function judgeArguments(
  uses: readonly PinUse[],
  runs: readonly Run[],
  chip: Chip,
  lines: Lines,
): readonly PinArgument[] {
  const groups = new Map<string, Group>();
  for (const use of uses) {
    if (use.pins.kind === 'known' && use.pins.values.length === 0) {
      continue;
    }
    const key = [use.span.file, use.span.start, use.callSpan.start, use.call, use.action].join(' ');
    const group = groups.get(key) ?? { uses: [] };
    group.uses.push(use);
    groups.set(key, group);
  }
  const taken = takenPins(runs, chip);
  const all = [...groups.values()];
  const judged = all.map((group): PinArgument => {
    const [first] = group.uses;
    const where = first === undefined ? '' : `${lines.nameOf(first.callSpan)} ${first.call}`;
    const pins = pinsOf(group.uses);
    if (pins === undefined) {
      return { where, verdict: 'none' };
    }
    return { where, pins, verdict: isExact(group, pins, all, taken, lines) ? 'exact' : 'set' };
  });
  return [...judged, ...unmetPlaces(uses, taken, lines)];
}

export function countArguments(judged: readonly PinArgument[]): ArgumentCounts {
  const count = (verdict: PinArgument['verdict']) => judged.filter((one) => one.verdict === verdict).length;
  return { exact: count('exact'), set: count('set'), none: count('none') };
}

/** All pins of some uses; undefined where one is unknown. */
function pinsOf(uses: readonly PinUse[]): readonly number[] | undefined {
  const pins = new Set<number>();
  for (const use of uses) {
    if (use.pins.kind === 'unknown') {
      return undefined;
    }
    for (const pin of use.pins.values) {
      pins.add(pin & 255);
    }
  }
  return [...pins].sort((a, b) => a - b);
}

interface Taken {
  readonly file: string;
  readonly line: number;
  readonly action: string;
  readonly pins: Set<number>;
}

function takenPins(runs: readonly Run[], chip: Chip): readonly Taken[] {
  const taken = new Map<string, Taken>();
  for (const { action, pin, at } of runs.flatMap(({ calls }) => calls)) {
    if (at !== undefined) {
      const key = `${at.file} ${at.line} ${action}`;
      const entry = taken.get(key) ?? { ...at, action, pins: new Set() };
      entry.pins.add(action === 'interrupt' ? (chip.platform.interruptPins[pin] ?? pin) : pin);
      taken.set(key, entry);
    }
  }
  return [...taken.values()];
}

function isExact(
  group: Group,
  pins: readonly number[],
  all: readonly Group[],
  taken: readonly Taken[],
  lines: Lines,
): boolean {
  const onePinEach = group.uses.every(({ pins: own }) => own.kind === 'known' && own.values.length === 1);
  if (pins.length === 1 || onePinEach || group.uses.every((use) => use.certain || isRegisterUse(use))) {
    return true;
  }
  const [first] = group.uses;
  if (first === undefined) {
    return false;
  }
  const seen = new Set(
    taken
      .filter((one) => one.action === first.action && lines.covers(first.callSpan, one))
      .flatMap((one) => [...one.pins]),
  );
  // Several calls of one kind may stand on the same line: the chip's pins are those of all of them.
  const span = lines.of(first.callSpan);
  const neighbours = all.filter(({ uses: [other] }) => {
    const there = other?.action === first.action ? lines.of(other.callSpan) : undefined;
    return there?.file === span.file && there.first <= span.last && span.first <= there.last;
  });
  const claimed = pinsOf(neighbours.flatMap(({ uses }) => uses));
  return claimed !== undefined && claimed.length === seen.size && claimed.every((pin) => seen.has(pin));
}

function unmetPlaces(uses: readonly PinUse[], taken: readonly Taken[], lines: Lines): readonly PinArgument[] {
  const unmet = taken.filter(
    (one) => !uses.some((use) => use.action === one.action && lines.covers(use.callSpan, one)),
  );
  return unmet.map(({ file, line, action }) => ({
    where: `${file}:${line} ${action}, no use`,
    verdict: 'none',
  }));
}
