/**
 * Contacts that coils operate. What flows decides how they stand and how they stand decides what flows, so the network
 * is solved from the position of rest until nothing moves any more. A coil that gets too little to operate for certain
 * and too much to stay at rest for certain is counted both ways.
 */
import type { Element, Network, OperatingPoint } from '../base/circuit';
import { exactly, type Range } from '../base/range';

/** What moves a contact: a winding, or the lamp of an optocoupler. */
type Coil = Extract<Element, { readonly type: 'coil' | 'diode' }>;
type Solve = (network: Network) => OperatingPoint;

/** Shares of its test current at which an optocoupler's lamp may, usually does and certainly does open its output. */
const LAMP_SHARES: Range = { min: 0.01, typ: 0.05, max: 0.1 };

/** How often contacts may move before it is said that they never come to rest. */
const MOST_MOVES = 64;
/** Doubtful coils of which every combination is solved; beyond it each is turned over alone. */
const MOST_COMBINED = 3;

/** True where some contact follows a coil. */
export function hasRelays(network: Network): boolean {
  return network.elements.some((element) => element.type === 'switch' && element.operatedBy !== undefined);
}

/** Solves a network with relays: `solve` takes every contact as it stands. */
export function solveRelays(network: Network, solve: Solve): OperatingPoint {
  const coils = network.elements.filter(
    (element): element is Coil =>
      (element.type === 'coil' || element.type === 'diode') &&
      network.elements.some((other) => other.type === 'switch' && other.operatedBy === element.id),
  );
  const first = settle(network, coils, new Map(), solve);
  if (!first.converged) {
    return first;
  }
  const doubtful = coils.filter((coil) => isDoubtful(coil, first));
  const notes = [
    ...first.notes,
    ...coils
      .filter((coil) => operatingAmps(coil) === undefined)
      .map(({ id }) => `Nothing says what operates ${id}; its contacts are counted at rest.`),
    ...doubtful.map(({ id }) => `What ${id} gets may operate it or not; both are counted.`),
  ];
  const others = turnedOver(doubtful, first).map((forced) => settle(network, coils, forced, solve));
  const failed = others.find((point) => !point.converged);
  return failed ?? { ...merge(first, others), notes };
}

/** Amperes at which the contacts change over; undefined where nothing says so. */
function operatingAmps(coil: Coil): Range | undefined {
  if (coil.type === 'diode') {
    return scaled(LAMP_SHARES, coil.atAmps);
  }
  // The winding's ampere turns move the contact: so the current counts, told as volts at the typical resistance.
  return coil.operateVolts && coil.ohms.typ > 0 ? scaled(coil.operateVolts, 1 / coil.ohms.typ) : undefined;
}

function scaled({ min, typ, max }: Range, by: number): Range {
  return { min: min * by, typ: typ * by, max: max * by };
}

/** Amperes that count, by their size: a winding takes them either way, a lamp forward only. */
function countedAmps(coil: Coil, point: OperatingPoint): Range {
  const { min, typ, max } = point.amps[coil.id] ?? { min: 0, typ: 0, max: 0 };
  if (coil.type === 'diode') {
    return { min: Math.max(0, min), typ: Math.max(0, typ), max: Math.max(0, max) };
  }
  const least = min <= 0 && max >= 0 ? 0 : Math.min(Math.abs(min), Math.abs(max));
  return { min: least, typ: Math.abs(typ), max: Math.max(Math.abs(min), Math.abs(max)) };
}

/** Whether a solved point holds the contacts, at the typical figures. */
function operates(coil: Coil, point: OperatingPoint): boolean {
  const needed = operatingAmps(coil);
  return needed !== undefined && countedAmps(coil, point).typ >= needed.typ;
}

function isDoubtful(coil: Coil, point: OperatingPoint): boolean {
  const needed = operatingAmps(coil);
  const counted = countedAmps(coil, point);
  return needed !== undefined && counted.min < needed.max && counted.max >= needed.min;
}

/** The other ways in which doubtful coils may stand. */
function turnedOver(
  doubtful: readonly Coil[],
  point: OperatingPoint,
): readonly ReadonlyMap<string, boolean>[] {
  const other = (coil: Coil): readonly [string, boolean] => [coil.id, !operates(coil, point)];
  if (doubtful.length > MOST_COMBINED) {
    return doubtful.map((coil) => new Map([other(coil)]));
  }
  const combinations: Map<string, boolean>[] = [];
  for (let bits = 1; bits < 2 ** doubtful.length; bits += 1) {
    combinations.push(new Map(doubtful.filter((_, at) => (bits >> at) & 1).map(other)));
  }
  return combinations;
}

/**
 * Moves the contacts by the typical figures until they stay, then solves with all tolerances. A position that comes back
 * comes back for ever.
 */
function settle(
  network: Network,
  coils: readonly Coil[],
  forced: ReadonlyMap<string, boolean>,
  solve: Solve,
): OperatingPoint {
  const typical = { ...network, elements: network.elements.map(typicalElement) };
  const seen = new Set<string>();
  let held: ReadonlySet<string> = new Set([...forced].flatMap(([id, holds]) => (holds ? [id] : [])));
  for (let move = 0; move < MOST_MOVES; move += 1) {
    const point = solve(withContacts(typical, held));
    if (!point.converged) {
      return solve(withContacts(network, held));
    }
    const next = coils.filter((coil) => forced.get(coil.id) ?? operates(coil, point)).map(({ id }) => id);
    if (next.length === held.size && next.every((id) => held.has(id))) {
      return solve(withContacts(network, held));
    }
    held = new Set(next);
    const position = next.join('\n');
    if (seen.has(position)) {
      break;
    }
    seen.add(position);
  }
  return restless(solve(typical), coils);
}

function typicalElement(element: Element): Element {
  const typical = (range: Range): Range => exactly(range.typ);
  switch (element.type) {
    case 'resistor':
    case 'coil':
    case 'switch':
      return { ...element, ohms: typical(element.ohms) };
    case 'source':
      return { ...element, volts: typical(element.volts), ohms: typical(element.ohms) };
    case 'current':
      return { ...element, amps: typical(element.amps) };
    case 'diode': {
      const { breakdownVolts } = element;
      const breakdown = breakdownVolts && { breakdownVolts: typical(breakdownVolts) };
      return { ...element, volts: typical(element.volts), ...breakdown };
    }
    case 'transistor': {
      const { gain, volts, ohms } = element;
      return { ...element, volts: typical(volts), ohms: typical(ohms), ...(gain && { gain: typical(gain) }) };
    }
  }
}

/** A point without figures that says why there are none. */
function restless(point: OperatingPoint, coils: readonly Coil[]): OperatingPoint {
  const empty = (figures: Readonly<Record<string, Range>>): Record<string, Range> =>
    Object.fromEntries(Object.keys(figures).map((name) => [name, exactly(0)]));
  const names = coils.map(({ id }) => id).join(', ');
  const note = `The contacts of ${names} never come to rest: what they switch takes the coil's current away again.`;
  return { nodes: empty(point.nodes), amps: empty(point.amps), converged: false, notes: [note] };
}

function withContacts(network: Network, held: ReadonlySet<string>): Network {
  const elements = network.elements.map((element): Element => {
    const moved = element.type === 'switch' && held.has(element.operatedBy ?? '');
    return moved ? { ...element, closed: !element.closed } : element;
  });
  return { ...network, elements };
}

/** The least and the most of all points; the usual figures are the first one's. */
function merge(first: OperatingPoint, others: readonly OperatingPoint[]): OperatingPoint {
  const widen = (key: 'nodes' | 'amps'): Record<string, Range> =>
    Object.fromEntries(
      Object.entries(first[key]).map(([name, range]) => {
        const all = [range, ...others.flatMap((point) => point[key][name] ?? [])];
        const min = Math.min(...all.map((one) => one.min));
        return [name, { min, typ: range.typ, max: Math.max(...all.map((one) => one.max)) }];
      }),
    );
  return { ...first, nodes: widen('nodes'), amps: widen('amps') };
}
