/**
 * What is drawn from a supply: the current of the rail or source in the worst state of each region, and what the
 * regulators behind it take. Each region counts for itself; that all are at their worst at once is for the rule to say.
 */
import type { Range } from '../../base/range';
import type { Draw } from '../../circuit';
import type { Placed, Region, StatePoint, Subject } from '../subject';
import { onlyFeeder, type PlacedOf, placedOf, type Supply, sourceSupplies } from './supplies';
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
  const draws = subject.regions.flatMap((region) => {
    const most = mostDrawn(subject, region, element, isLogic);
    return most && most.amps.max > noLoad ? [{ ...most, name: listWords(most.parts.slice(0, 2)) }] : [];
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

function mostDrawn(
  subject: Subject,
  region: Region,
  element: string,
  isLogic: boolean,
): { readonly amps: Range; readonly parts: readonly string[] } | undefined {
  if (!touches(region, element, isLogic)) return undefined;
  let most: { readonly amps: Range; readonly state: StatePoint } | undefined;
  for (const state of subject.points(region)) {
    const amps = drawnIn(state, element, isLogic);
    if (!most || amps.typ > most.amps.typ || (amps.typ === most.amps.typ && amps.max > most.amps.max))
      most = { amps, state };
  }
  return most && { amps: most.amps, parts: partsBy(region, most.state) };
}

/** Regions without the supply are not solved for it. */
function touches(region: Region, element: string, isLogic: boolean): boolean {
  if (isLogic && region.pins.length > 0) return true;
  const net = element.startsWith('rail:') ? element.slice(5) : undefined;
  return region.elements.some((one) =>
    net === undefined ? one.id === element : one.nets.includes(net) || one.third === net,
  );
}

function drawnIn({ point, drives }: StatePoint, element: string, isLogic: boolean): Range {
  const ids = [element];
  // What a pin gives comes out of the rail that feeds the chip; where the rail is in the network it is counted there.
  if (isLogic && point.amps[element] === undefined) {
    for (const [pin, drive] of Object.entries(drives))
      if (drive === 'high' || drive === 'pull-up') ids.push(`pin:${pin}`);
  }
  const sum = (key: keyof Range) =>
    ids.reduce((total, id) => total + Math.max(0, point.amps[id]?.[key] ?? 0), 0);
  return { min: sum('min'), typ: sum('typ'), max: sum('max') };
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
