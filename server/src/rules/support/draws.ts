/**
 * What is drawn from a supply: the current of the rail or source in the worst state of each region, and what the
 * regulators behind it take. Each region counts for itself; that all are at their worst at once is for the rule to say.
 */
import type { Range } from '../../base/range';
import type { Draw } from '../../circuit';
import type { Placed, Region, StatePoint, Subject } from '../subject';
import { onlyFeeder, type PlacedOf, placedOf, type Supply, sourceSupplies } from './supplies';
import { isOverdriven, toldRegions } from './told-regions';
import { listWords } from './views';

export interface SupplyDraw extends Draw {
  /** Parts that draw, the most first. */
  readonly parts: readonly string[];
}

/** Draws below this are no load worth a name, amperes. */
const noLoad = 1e-4;

/** What each region and each regulator draws from a supply. */
export function drawsOf(subject: Subject, supply: Supply, deep = 0): readonly SupplyDraw[] {
  const element = supply.source ? supply.source.id : `rail:${supply.net}`;
  const isLogic = supply.pin !== undefined && supply.pin.id === subject.build.board.logicRail;
  const found = subject.regions.flatMap((region) => mostDrawn(subject, region, element, isLogic) ?? []);
  // What the chip gives beyond its own total is told of the chip, and is no draw it could keep up.
  const given = found.reduce((sum, { pins }) => sum + pins, 0);
  const beyond = Math.max(0, 1 - (subject.build.board.limits.total?.max ?? given) / Math.max(given, 1e-9));
  const draws = found.flatMap(({ amps, pins, parts }) => {
    const less = pins * beyond;
    const own = { min: Math.max(0, amps.min - less), typ: amps.typ - less, max: amps.max - less };
    return own.max > noLoad ? [{ name: listWords(parts.slice(0, 2)), parts, amps: own }] : [];
  });
  // A regulator that gets its power from one that gets it back would never end.
  if (deep > 3) return draws;
  const regulators = placedOf(subject, 'source').flatMap((source) => {
    const amps = inputAmps(subject, source, supply, deep);
    return amps ? [{ name: source.part, parts: [source.part], amps }] : [];
  });
  return [...draws, ...regulators];
}

/** Amperes drawn from a supply, all draws together. */
export function drawnFrom(subject: Subject, supply: Supply, deep = 0): Range {
  const draws = drawsOf(subject, supply, deep);
  const sum = (key: keyof Range) => draws.reduce((total, { amps }) => total + Math.max(0, amps[key]), 0);
  return { min: sum('min'), typ: sum('typ'), max: sum('max') };
}

function inputAmps(
  subject: Subject,
  source: PlacedOf<'source'>,
  supply: Supply,
  deep: number,
): Range | undefined {
  const { from, efficiency, volts } = source.primitive;
  if (from === undefined) return undefined;
  const net = netOfTerminal(subject, source.part, from);
  const feeder = net === undefined ? undefined : onlyFeeder(subject, net);
  if (!feeder || feeder.net !== supply.net || feeder.source?.part === source.part) return undefined;
  const own = sourceSupplies(subject).find((candidate) => candidate.source.id === source.id);
  const out = own && drawnFrom(subject, own, deep + 1);
  if (!out || out.max <= noLoad) return undefined;
  if (!efficiency) return out;
  const share = (amps: number, over: number, eff: number) =>
    (amps * volts.typ) / (eff * Math.max(over, 1e-3));
  return {
    min: share(out.min, supply.volts.max, efficiency.max),
    typ: share(out.typ, supply.volts.typ, efficiency.typ),
    max: share(out.max, supply.volts.min, efficiency.min),
  };
}

/** Net of a part's terminal, where a wire reaches it. */
export function netOfTerminal(subject: Subject, part: string, terminal: string): string | undefined {
  return subject.build.nets.find(({ terminals }) =>
    terminals.some((end) => end.part === part && end.terminal === terminal),
  )?.id;
}

interface Most {
  readonly amps: Range;
  /** The share of it that pins give, usual. */
  readonly pins: number;
  /** The most first. */
  readonly parts: readonly string[];
}

function mostDrawn(subject: Subject, region: Region, element: string, isLogic: boolean): Most | undefined {
  if (!touches(region, element, isLogic) || toldRegions(subject).has(region)) return undefined;
  let most: Most | undefined;
  for (const state of subject.points(region)) {
    if (isOverdriven(subject, region, state)) continue;
    const loads = loadsIn(region, state, element);
    const pins = isLogic ? givenByPins(state) : 0;
    const typ = isChopped(region, state)
      ? loads.typ
      : // What a rail gives holds what its pins give; a source beside it does not.
        Math.max(0, state.point.amps[element]?.typ ?? 0) + (element.startsWith('rail:') ? 0 : pins);
    // At rest and at their peaks are loads; the corners of resistors are tolerances, and no peaks.
    const amps = { min: Math.min(typ, loads.min), typ, max: typ - loads.typ + loads.max };
    if (!most || amps.typ > most.amps.typ || (amps.typ === most.amps.typ && amps.max > most.amps.max))
      most = { amps, pins: Math.min(typ, pins), parts: partsBy(region, state) };
  }
  return most;
}

/** An output that would give more than it can limits the current by itself, so that no sum of resistors tells it. */
function isChopped({ elements }: Region, { point }: StatePoint): boolean {
  return elements.some(
    ({ id, primitive }) =>
      primitive.type === 'logic-output' &&
      primitive.maxAmps !== undefined &&
      Math.abs(point.amps[id]?.typ ?? 0) > primitive.maxAmps,
  );
}

/** Regions without the supply are not solved for it. */
function touches(region: Region, element: string, isLogic: boolean): boolean {
  if (isLogic && region.pins.length > 0) return true;
  const net = element.startsWith('rail:') ? element.slice(5) : undefined;
  return region.elements.some((one) =>
    net === undefined ? one.id === element : one.nets.includes(net) || one.third === net,
  );
}

/** Amperes of the loads on the supply's own net that work in a state: at rest, usual and at their peaks. */
function loadsIn(region: Region, { point }: StatePoint, element: string): Range {
  const plus = element.startsWith('rail:')
    ? element.slice(5)
    : region.elements.find(({ id }) => id === element)?.nets[0];
  const sum = { min: 0, typ: 0, max: 0 };
  for (const { id, nets, primitive } of region.elements) {
    if (primitive.type !== 'load' || nets[0] !== plus || !((point.amps[id]?.typ ?? 0) > 0)) continue;
    sum.min += primitive.amps.min;
    sum.typ += point.amps[id]?.typ ?? 0;
    sum.max += primitive.amps.max;
  }
  return sum;
}

/** Usual amperes that pins give in a state: they come out of the rail that feeds the chip. */
function givenByPins({ point, drives }: StatePoint): number {
  let sum = 0;
  for (const [pin, drive] of Object.entries(drives)) {
    if (drive === 'high' || drive === 'pull-up') sum += Math.max(0, point.amps[`pin:${pin}`]?.typ ?? 0);
  }
  return sum;
}

function partsBy(region: Region, { point }: StatePoint): readonly string[] {
  const amps = new Map<string, number>();
  const drawing = (one: Placed) => one.primitive.type !== 'source' && one.primitive.type !== 'switch';
  for (const one of region.elements.filter((each) => drawing(each) && !each.onBoard)) {
    const drawn = Math.abs(point.amps[one.id]?.typ ?? 0);
    // A resistor in front of a lamp carries the same, and the lamp is what people know.
    const weight = one.primitive.type === 'resistor' ? 0.99 : 1;
    if (drawn > noLoad) amps.set(one.part, Math.max(amps.get(one.part) ?? 0, drawn * weight));
  }
  return [...amps].sort(([, a], [, b]) => b - a).map(([part]) => part);
}
