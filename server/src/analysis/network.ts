/** A region in one state as a network of elements: pins become sources and resistors, switches close or vanish. */
import type { Board } from '../base/build';
import type { Element, Network } from '../base/circuit';
import type { PinMoment } from '../base/pin-use';
import { exactly, type Range } from '../base/range';
import { wiperPlaces } from '../base/wiper-places';
import { elementsOfPart } from '../circuit';
import type { PinView, Placed, Region } from '../rules/subject';
import { strengthOf } from '../rules/support/pin-limits';
import { switchedLoads } from './loads';
import type { RegionState } from './states';

/** Contact resistance of a closed switch and a board rail's own resistance, ohms (common practice: well under 1). */
const contactOhms: Range = { min: 0.01, typ: 0.05, max: 0.1 };
const railOhms = exactly(0.01);

/** The node all volts are counted from. */
const ground = '0';

/** What a region depends on besides its elements. */
export interface NetworkContext {
  readonly board: Board;
  readonly pin: (id: string) => PinView | undefined;
  readonly rails: Readonly<Record<string, string>>;
  /** Combinations of pin states the sketch was seen to have; absent where anything may go together. */
  readonly moments?: readonly PinMoment[];
}

/** The network of a region in one state. */
export function buildNetwork(region: Region, state: RegionState, context: NetworkContext): Network {
  const elements: Element[] = [];
  const usedRails = new Set<string>();
  const isGround = (net: string) => context.pin(context.rails[net] ?? '')?.pin.type === 'ground';
  const node = (net: string): string => {
    if (isGround(net)) return ground;
    if (context.rails[net] !== undefined) usedRails.add(net);
    return net;
  };
  const fed = fedNets(region, state, context, isGround);
  const switched = switchedLoads(
    region,
    (net) => context.rails[net] !== undefined,
    (net) => context.pin(context.rails[net] ?? ''),
  );
  const joined = joinedElements(region, state, node);
  const reset = context.board.reset;
  const resetView = reset && region.pins.includes(reset.pin) ? context.pin(reset.pin) : undefined;
  for (const placed of region.elements) {
    // The reset figure counts all pull-ups of the board together, so they must not count again one by one.
    if (resetView && placed.onBoard && placed.nets.includes(resetView.net.id)) continue;
    const ohms = switched.get(placed.id);
    const made = joined.get(placed.id);
    if (made !== undefined) elements.push(...made);
    else if (ohms !== undefined) {
      const [a, b] = placed.nets;
      elements.push({ type: 'resistor', id: placed.id, a: node(a), b: node(b), ohms });
    } else elements.push(...elementsOf(placed, node, state, fed));
  }
  const { limits } = context.board;
  const logicRail = context.pin(context.board.logicRail);
  const logicVolts = figures(logicRail?.pin.volts ?? exactly(0));
  const feeder =
    logicRail && context.rails[logicRail.net.id] === logicRail.pin.id ? logicRail.net.id : undefined;
  if (reset && resetView) {
    const plus = node(resetView.net.id);
    const ohms = figures(reset.pullUpOhms);
    elements.push({ type: 'source', id: `pin:${reset.pin}`, plus, minus: ground, volts: logicVolts, ohms });
  }
  for (const [pin, drive] of Object.entries(state.drives)) {
    const view = context.pin(pin);
    if (!view || drive === 'input') continue;
    const at = node(view.net.id);
    const id = `pin:${pin}`;
    const { outputHighOhms = limits.outputHighOhms, outputLowOhms = limits.outputLowOhms } =
      strengthOf(context.board, view) ?? {};
    if (drive === 'high' || drive === 'pull-up') {
      const ohms = figures(drive === 'high' ? outputHighOhms : limits.pullUpOhms);
      // A pin is never higher than the rail that feeds it: both stand at the same corner of the rail's tolerance.
      elements.push(
        feeder === undefined
          ? { type: 'source', id, plus: at, minus: ground, volts: logicVolts, ohms }
          : { type: 'resistor', id, a: node(feeder), b: at, ohms },
      );
    } else {
      const ohms = figures(drive === 'low' ? outputLowOhms : (limits.pullDownOhms ?? limits.pullUpOhms));
      elements.push({ type: 'resistor', id, a: at, b: ground, ohms });
    }
  }
  for (const net of usedRails) {
    const volts = context.pin(context.rails[net] ?? '')?.pin.volts;
    if (volts) {
      elements.push({
        type: 'source',
        id: `rail:${net}`,
        plus: net,
        minus: ground,
        volts: figures(volts),
        ohms: railOhms,
      });
    }
  }
  return { ground, elements };
}

/**
 * Elements of primitives that mean something only beside others of their part: a transistor and the diode that is its
 * base, a coil and its contacts. By placed id; a diode that went into its transistor has none.
 */
function joinedElements(
  region: Region,
  state: RegionState,
  node: (net: string) => string,
): ReadonlyMap<string, readonly Element[]> {
  const found = new Map<string, readonly Element[]>();
  const parts = new Map<string, Placed[]>();
  for (const placed of region.elements) {
    const list = parts.get(placed.part);
    if (list === undefined) parts.set(placed.part, [placed]);
    else list.push(placed);
  }
  for (const [part, all] of parts) {
    if (!all.some(({ primitive: { type } }) => type === 'transistor' || type === 'coil')) continue;
    const nets = new Map<string, string>();
    for (const { primitive, nets: ends, third } of all) {
      primitive.ends.forEach((end, index) => void nets.set(end, ends[index] ?? end));
      if (primitive.type === 'transistor' && third !== undefined) nets.set(primitive.control, third);
    }
    const moved = new Set<string>();
    for (const { id, primitive } of all) {
      if (primitive.type === 'switch' && (state.switches[id] ?? primitive.rest) !== primitive.rest)
        moved.add(primitive.id);
    }
    const own = all.filter(({ primitive: { type } }) => joining.has(type));
    for (const { id } of own) found.set(id, []);
    const made = elementsOfPart(
      own.map(({ primitive }) => primitive),
      { prefix: `${part}/`, nodeOf: (end) => node(nets.get(end) ?? `${part}.${end}`), moved },
    );
    for (const element of made) found.set(element.id, [element]);
  }
  return found;
}

const joining: ReadonlySet<string> = new Set(['transistor', 'diode', 'resistor', 'coil', 'switch']);

/** Only the three figures: sources and spans must not split the store of solved points. */
function figures(range: Range): Range {
  return { min: range.min, typ: range.typ, max: range.max };
}

/**
 * Nets that something lifts above ground: a load draws its current there and nowhere else. Alone, or behind a pin that
 * is low, its constant current would invent a voltage.
 */
function fedNets(
  region: Region,
  { drives, switches }: RegionState,
  context: NetworkContext,
  isGround: (net: string) => boolean,
): ReadonlySet<string> {
  if (!region.elements.some((element) => element.primitive.type === 'load')) return new Set();
  const fed = new Set<string>();
  for (const element of region.elements) {
    for (const net of element.nets) if (context.rails[net] !== undefined && !isGround(net)) fed.add(net);
    if (element.primitive.type === 'source') fed.add(element.nets[0]);
  }
  for (const [pin, drive] of Object.entries(drives)) {
    const net = context.pin(pin)?.net.id;
    if (net !== undefined && drive === 'high') fed.add(net);
  }
  for (let before = -1; before < fed.size; ) {
    before = fed.size;
    for (const { primitive, nets, id } of region.elements) {
      const [first, second] = nets;
      const joins = primitive.type === 'resistor' || primitive.type === 'coil' || switches[id] === 'closed';
      if (fed.has(first) && (joins || primitive.type === 'diode') && !isGround(second)) fed.add(second);
      if (fed.has(second) && joins && !isGround(first)) fed.add(first);
    }
  }
  return fed;
}

function elementsOf(
  placed: Placed,
  node: (net: string) => string,
  state: RegionState,
  fed: ReadonlySet<string>,
): readonly Element[] {
  const { id, primitive } = placed;
  const first = node(placed.nets[0]);
  const second = node(placed.nets[1]);
  const third = placed.third === undefined ? undefined : node(placed.third);
  const resistor = (a: string, b: string, ohms: Range, name = id): Element => ({
    type: 'resistor',
    id: name,
    a,
    b,
    ohms,
  });
  switch (primitive.type) {
    case 'resistor':
    case 'coil':
    case 'logic-input':
      return [resistor(first, second, primitive.ohms)];
    case 'diode': {
      const { volts, atAmps, breakdownVolts, breakdownAmps } = primitive;
      const breakdown = breakdownVolts === undefined ? {} : { breakdownVolts };
      const test = breakdownAmps === undefined ? {} : { breakdownAmps };
      return [{ type: 'diode', id, anode: first, cathode: second, volts, atAmps, ...breakdown, ...test }];
    }
    case 'source': {
      const { volts, ohms } = primitive;
      return [{ type: 'source', id, plus: first, minus: second, volts, ohms }];
    }
    case 'switch':
      return state.switches[id] === 'closed' ? [resistor(first, second, contactOhms)] : [];
    case 'potentiometer': {
      if (third === undefined) return [];
      const place = wiperPlaces[state.settings[id] ?? ''] ?? 0.5;
      return [
        resistor(first, third, scale(primitive.ohms, place), `${id}:first`),
        resistor(third, second, scale(primitive.ohms, 1 - place), `${id}:second`),
      ];
    }
    case 'logic-output':
      if (state.settings[id] === 'high' && third !== undefined)
        return [resistor(third, first, primitive.ohms)];
      if (state.settings[id] === 'released') return [];
      return [resistor(first, second, primitive.ohms)];
    case 'load':
      return fed.has(placed.nets[0])
        ? [{ type: 'current', id, from: first, to: second, amps: primitive.amps }]
        : [];
    case 'capacitor':
    case 'transistor':
      return [];
  }
}

function scale(range: Range, by: number): Range {
  return { min: range.min * by, typ: range.typ * by, max: range.max * by };
}
