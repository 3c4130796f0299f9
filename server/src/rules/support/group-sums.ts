/**
 * What groups of pins give and take together, over the moments that the sketch was seen to have. Where it could not be
 * followed nobody knows what is on together, and nothing is told.
 */
import { numbersOf } from '../../base/build';
import type { PinMoment } from '../../base/pin-use';
import type { PinView, Region, StatePoint, Subject } from '../subject';
import { findDirectLoads } from './direct-loads';
import { findUnlimited } from './limiting';
import { findMeetings } from './meetings';
import { findShorts } from './shorts';
import { isSignal, lampsOf } from './views';

export type Direction = 'source' | 'sink' | 'both';

export interface GroupSum {
  /** Amperes, by the usual figures: all tolerances at their worst at once is nobody's build. */
  readonly amps: number;
  /** Pins that carry, the most first. */
  readonly pins: readonly { readonly view: PinView; readonly amps: number }[];
}

interface Share {
  readonly amps: number;
  readonly pins: readonly { readonly view: PinView; readonly amps: number }[];
}

/** The most that pins of a group carry at one moment; undefined where the moments are not known. */
export function mostTogether(
  subject: Subject,
  isMember: (view: PinView) => boolean,
  direction: Direction,
): GroupSum | undefined {
  const { moments } = subject.facts;
  // A fault at one pin is told there, and its current is not what the build will have.
  const faulty =
    findUnlimited(subject, lampsOf(subject)).some(({ pins }) => pins.length > 0) ||
    [findShorts, findDirectLoads, findMeetings].some((find) => find(subject).length > 0);
  if (!moments || faulty) return undefined;
  const all = subject.pins.filter((view) => isSignal(view) && isMember(view));
  const members = direction === 'source' ? all : all.filter((view) => !startsLow(view));
  const loose = new Set(subject.facts.loosePins ?? []);
  const regions = subject.regions.filter(({ pins }) => members.some(({ pin }) => pins.includes(pin.id)));
  const kept = regions.map(() => new Map<string, Share>());
  let most: GroupSum | undefined;
  for (const moment of moments) {
    const shares = regions.map((region, index) => {
      const key = momentKey(subject, region, moment);
      let share = kept[index]?.get(key);
      if (!share) {
        share = shareOf(subject, region, moment, members, direction, loose);
        kept[index]?.set(key, share);
      }
      return share;
    });
    const amps = shares.reduce((sum, share) => sum + share.amps, 0);
    if (most && amps <= most.amps) continue;
    const pins = shares.flatMap((share) => share.pins).sort((a, b) => b.amps - a.amps);
    most = { amps, pins };
  }
  return most;
}

function momentKey(subject: Subject, region: Region, moment: PinMoment): string {
  return region.pins.map((id) => statesAt(subject, id, moment).join('/')).join();
}

function statesAt(subject: Subject, id: string, { pins }: PinMoment): readonly string[] {
  const view = subject.pins.find(({ pin }) => pin.id === id);
  const number = view && numbersOf(view.pin).find((one) => pins[one] !== undefined);
  return (number === undefined ? undefined : pins[number]) ?? ['input'];
}

/** What the members of one region carry at a moment: with the switches as they may be, and loose pins at their least. */
function shareOf(
  subject: Subject,
  region: Region,
  moment: PinMoment,
  members: readonly PinView[],
  direction: Direction,
  loose: ReadonlySet<number>,
): Share {
  const own = members.filter(({ pin }) => region.pins.includes(pin.id));
  const unsure = own.some(({ pin }) => numbersOf(pin).some((number) => loose.has(number)));
  let chosen: Share | undefined;
  for (const state of subject.points(region)) {
    if (!Object.entries(state.drives).every(([id, drive]) => statesAt(subject, id, moment).includes(drive)))
      continue;
    const pins = own
      .map((view) => ({ view, amps: carried(state, view, direction) }))
      .filter(({ amps }) => amps > 0);
    const amps = pins.reduce((sum, pin) => sum + pin.amps, 0);
    if (!chosen || (unsure ? amps < chosen.amps : amps > chosen.amps)) chosen = { amps, pins };
  }
  return chosen ?? { amps: 0, pins: [] };
}

function carried({ drives, point }: StatePoint, { pin }: PinView, direction: Direction): number {
  const drive = drives[pin.id];
  const amps = Math.abs(point.amps[`pin:${pin.id}`]?.typ ?? 0);
  if (drive !== 'high' && drive !== 'low') return 0;
  if (direction === 'both') return amps;
  return (direction === 'source') === (drive === 'high') ? amps : 0;
}

/**
 * True for a pin that setup makes an output and only then high: for that instant it is low with all its like, which
 * hurts nothing, and the moments do not tell it from a state that lasts.
 */
function startsLow({ uses }: PinView): boolean {
  const mode = uses.find(({ action, modes }) => action === 'mode' && modes?.includes('output'));
  if (!mode) return false;
  return uses.some(
    ({ action, phase, order, value }) =>
      action === 'write' &&
      phase === 'setup' &&
      order > mode.order &&
      (value?.kind !== 'known' || value.values.some((level) => level !== 0)),
  );
}
