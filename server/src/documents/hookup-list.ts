/**
 * The rows of the hookup list in an order that suits the hand. Ground comes first, then the supplies, since everything
 * else hangs on them; then the signals in the order of the headers, each run followed to its end; then what goes from
 * part to part.
 */
import type { Build, End, Net, Wire } from '../base/build';
import { formatQuantity } from '../base/quantity';
import { boardFirst, endWords, findTerminal, gaugeOf, gaugeWords, stripOf } from './words';

/** One wire as somebody solders it. */
export interface HookupRow {
  /** The wire's id in the build. */
  readonly wire: string;
  /** Counted through the whole list, from 1. */
  readonly number: number;
  readonly group: HookupGroup;
  readonly from: string;
  readonly to: string;
  readonly colour: string;
  /** "AWG 24", or empty where the manifest does not say. */
  readonly gauge: string;
  /** "20 cm", or empty where the manifest does not say. */
  readonly length: string;
  /** How its ends are prepared. */
  readonly ends: string;
  /** Which way round matters at an end, and the user's note. */
  readonly watch: string;
}

export type HookupGroup = 'ground' | 'supplies' | 'signals' | 'between';

export const HOOKUP_GROUPS: readonly (readonly [HookupGroup, string])[] = [
  ['ground', 'Ground'],
  ['supplies', 'Supplies'],
  ['signals', 'Signals, by header'],
  ['between', 'From part to part'],
];

interface Rank {
  readonly group: HookupGroup;
  /** Ascending within the group; wires of one net or one run stand together. */
  readonly key: readonly number[];
}

/** Rows in soldering order. */
export function listHookup(build: Build): readonly HookupRow[] {
  const rank = rankOf(build);
  const groups = HOOKUP_GROUPS.map(([group]) => group);
  return build.wires
    .map((wire, index) => ({ wire, index, rank: rank(wire) }))
    .sort(
      (a, b) =>
        groups.indexOf(a.rank.group) - groups.indexOf(b.rank.group) ||
        compareKeys(a.rank.key, b.rank.key) ||
        a.index - b.index,
    )
    .map(({ wire, rank: { group } }, index) => rowOf(build, wire, group, index + 1));
}

export function rowOf(build: Build, wire: Wire, group: HookupGroup, number: number): HookupRow {
  const [from, to] = boardFirst(wire);
  const gauge = gaugeOf(build, wire);
  const notes = wire.note === undefined ? [] : [wire.note];
  return {
    wire: wire.id,
    number,
    group,
    from: endWords(from),
    to: endWords(to),
    colour: wire.colour ?? '',
    gauge: gauge ? gaugeWords(gauge) : '',
    length: wire.length === undefined ? '' : formatQuantity(wire.length, 'm'),
    ends: endsWords(build, wire),
    watch: [...[from, to].flatMap((end) => polarityOf(build, end)), ...notes].join('; '),
  };
}

/** "strip 5 mm; sleeve at R1.1": a leg that hangs in a wire run is bare metal until it is covered. */
function endsWords(build: Build, wire: Wire): string {
  const sleeved = boardFirst(wire).filter((end) => needsSleeve(build, end));
  const strip = `strip ${formatQuantity(stripOf(build, wire), 'm')}`;
  return sleeved.length > 0 ? `${strip}; sleeve at ${sleeved.map(endWords).join(' and ')}` : strip;
}

/** True at the legs of parts that a run passes: two-legged ones, without a housing that insulates them. */
export function needsSleeve(build: Build, end: End): boolean {
  return findTerminal(build, end)?.part.series !== undefined;
}

function polarityOf(build: Build, end: End): string[] {
  const found = findTerminal(build, end);
  if (end.kind !== 'terminal' || !found?.terminal.polarity) return [];
  const { tell } = found.terminal;
  return [`${end.part}.${end.terminal}${tell === undefined ? '' : `: ${tell}`}`];
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let index = 0; index < Math.max(a.length, b.length); index++) {
    const difference = (a[index] ?? -1) - (b[index] ?? -1);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Where a wire stands, by its net: what is on ground with the grounds, whether it touches the board or not. */
function rankOf(build: Build): (wire: Wire) => Rank {
  const pins = new Map(build.board.pins.map((pin) => [pin.id, pin]));
  const order = new Map(build.board.headers.map((header, index) => [header.id, index]));
  const netOfWire = new Map<string, Net>();
  build.nets.forEach((net) => {
    for (const wire of net.wires) netOfWire.set(wire, net);
  });
  const plusNets = new Set(build.nets.filter((net) => isPlus(build, net)));
  const place = (wire: Wire): number => {
    const places = wire.ends.flatMap((end) =>
      end.kind === 'pin'
        ? [(order.get(end.position?.header ?? '') ?? 99) * 1000 + (end.position?.index ?? 999)]
        : [],
    );
    return places.length > 0 ? Math.min(...places) : 1e6;
  };
  const onRail = (wire: Wire) =>
    (netOfWire.get(wire.id)?.pins ?? []).some((pin) => {
      const type = pins.get(pin)?.type;
      return type === 'ground' || type === 'supply';
    });
  const signalOf = signalPlaces(
    build.wires.filter((wire) => !onRail(wire)),
    place,
  );
  return (wire) => {
    const net = netOfWire.get(wire.id);
    const index = net ? build.nets.indexOf(net) : 0;
    const types = (net?.pins ?? []).map((pin) => pins.get(pin)?.type);
    if (types.includes('ground')) return { group: 'ground', key: [place(wire)] };
    if (types.includes('supply')) return { group: 'supplies', key: [0, index, place(wire)] };
    if (net && plusNets.has(net)) return { group: 'supplies', key: [1, index, place(wire)] };
    const signal = signalOf(wire);
    return signal ? { group: 'signals', key: signal } : { group: 'between', key: [index] };
  };
}

/** A net that a part's own source feeds and that no pin of the board holds. */
function isPlus(build: Build, net: Net): boolean {
  return net.terminals.some(({ part, terminal }) => {
    const inside = build.parts.find((candidate) => candidate.id === part)?.inside ?? [];
    return inside.some((primitive) => primitive.type === 'source' && primitive.ends[0] === terminal);
  });
}

/** For every wire of a run that begins at a pin: the pin's place and how many pieces away it is. */
function signalPlaces(
  wires: readonly Wire[],
  place: (wire: Wire) => number,
): (wire: Wire) => readonly number[] | undefined {
  const found = new Map<string, readonly number[]>();
  for (const wire of wires) {
    if (wire.ends.some(({ kind }) => kind === 'pin')) found.set(wire.id, [place(wire), 0]);
  }
  // A path's later pieces follow its first; a piece of another entry follows the entry's own piece at a pin.
  const starts = new Map<number, number>();
  for (const wire of wires) {
    const own = found.get(wire.id);
    if (own) starts.set(wire.entry, Math.min(starts.get(wire.entry) ?? 1e9, own[0] ?? 1e9));
  }
  for (const wire of wires) {
    const start = starts.get(wire.entry);
    if (!found.has(wire.id) && start !== undefined) found.set(wire.id, [start, wire.piece + 1]);
  }
  return (wire) => found.get(wire.id);
}
