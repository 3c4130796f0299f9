/**
 * Operating points of a region in every state its pins and switches can be in together. Solved points are kept by
 * the network they belong to, so a keystroke that changes no drive and no wire solves nothing.
 */
import type { Board } from '../base/build';
import type { Element, Network, OperatingPoint } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import type { Drive, PinView, Placed, Region, StatePoint } from '../rules/subject';

/** States of one region that are looked at; a region with more is varied one thing at a time, and says so. */
export const stateLimit = 256;

/** Contact resistance of a closed switch and a board rail's own resistance, ohms (common practice: well under 1). */
const contactOhms: Range = { min: 0.01, typ: 0.05, max: 0.1 };
const railOhms = exactly(0.01);

/** The node all volts are counted from. */
const ground = '0';

export type Solve = (network: Network) => OperatingPoint;

interface Choice {
  readonly kind: 'pin' | 'switch' | 'setting';
  readonly id: string;
  readonly values: readonly string[];
}

/** What a region depends on besides its elements. */
export interface PointContext {
  readonly board: Board;
  readonly pin: (id: string) => PinView | undefined;
  readonly rails: Readonly<Record<string, string>>;
  readonly solve: Solve;
}

function choicesOf(region: Region, context: PointContext): Choice[] {
  const choices: Choice[] = [];
  for (const id of region.pins) {
    const view = context.pin(id);
    if (view && view.pin.number !== undefined) choices.push({ kind: 'pin', id, values: view.drives });
  }
  for (const element of region.elements) {
    const { primitive, id } = element;
    if (primitive.type === 'switch') {
      const values = primitive.rest === 'open' ? ['open', 'closed'] : ['closed', 'open'];
      choices.push({ kind: 'switch', id, values });
    } else if (primitive.type === 'potentiometer') {
      choices.push({ kind: 'setting', id, values: Object.keys(wiperPlaces) });
    } else if (primitive.type === 'logic-output') {
      choices.push({ kind: 'setting', id, values: element.third === undefined ? ['low'] : ['low', 'high'] });
    }
  }
  return choices;
}

/** Every combination, or, past the limit, each choice varied alone while the others keep their first value. */
function statesOf(choices: readonly Choice[]): string[][] {
  const first = choices.map((choice) => choice.values[0] ?? '');
  const total = choices.reduce((product, choice) => product * choice.values.length, 1);
  if (total > stateLimit) {
    const states = [first];
    choices.forEach((choice, index) => {
      for (const value of choice.values.slice(1)) {
        states.push(first.map((other, at) => (at === index ? value : other)));
      }
    });
    return states;
  }
  let states: string[][] = [[]];
  for (const choice of choices)
    states = states.flatMap((state) => choice.values.map((value) => [...state, value]));
  return states;
}

/** True where the region has more states than are looked at. */
export function exceedsLimit(region: Region, context: PointContext): boolean {
  return (
    choicesOf(region, context).reduce((product, choice) => product * choice.values.length, 1) > stateLimit
  );
}

/** Solves a region in all its states. Figures that did not converge are left out. */
export function solveRegion(region: Region, context: PointContext): StatePoint[] {
  const choices = choicesOf(region, context);
  const points: StatePoint[] = [];
  for (const state of statesOf(choices)) {
    const drives: Record<string, Drive> = {};
    const switches: Record<string, 'open' | 'closed'> = {};
    const settings: Record<string, string> = {};
    const words: string[] = [];
    choices.forEach((choice, index) => {
      const value = state[index] ?? '';
      if (choice.kind === 'pin') {
        drives[choice.id] = value as Drive;
        words.push(`${choice.id} ${driveWords[value as Drive]}`);
      } else {
        if (choice.kind === 'switch') switches[choice.id] = value as 'open' | 'closed';
        else settings[choice.id] = value;
        words.push(`${choice.id.split('/')[0]} ${value}`);
      }
    });
    const point = context.solve(buildNetwork(region, { drives, switches, settings }, context));
    if (point.converged) points.push({ words: words.join(', '), drives, switches, settings, point });
  }
  return points;
}

const driveWords: Record<Drive, string> = {
  high: 'high',
  low: 'low',
  input: 'as input',
  'pull-up': 'with pull-up',
  'pull-down': 'with pull-down',
};

type RegionState = Pick<StatePoint, 'drives' | 'switches' | 'settings'>;

function buildNetwork(region: Region, state: RegionState, context: PointContext): Network {
  const elements: Element[] = [];
  const usedRails = new Set<string>();
  const node = (net: string): string => {
    const rail = context.rails[net];
    if (rail === undefined) return net;
    if (context.pin(rail)?.pin.type === 'ground') return ground;
    usedRails.add(net);
    return net;
  };
  const fed =
    region.nets.length === 0 || region.elements.some((element) => element.primitive.type === 'source');
  const reset = context.board.reset;
  const resetView = reset && region.pins.includes(reset.pin) ? context.pin(reset.pin) : undefined;
  for (const placed of region.elements) {
    // The reset figure counts all pull-ups of the board together, so they must not count again one by one.
    if (resetView && placed.onBoard && placed.nets.includes(resetView.net.id)) continue;
    elements.push(...elementsOf(placed, node, state, fed));
  }
  const { limits } = context.board;
  const logicVolts = rangeOf(context.pin(context.board.logicRail)?.pin.volts ?? exactly(0));
  if (reset && resetView) {
    const plus = node(resetView.net.id);
    const ohms = rangeOf(reset.pullUpOhms);
    elements.push({ type: 'source', id: `pin:${reset.pin}`, plus, minus: ground, volts: logicVolts, ohms });
  }
  for (const [pin, drive] of Object.entries(state.drives)) {
    const view = context.pin(pin);
    if (!view || drive === 'input') continue;
    const at = node(view.net.id);
    const id = `pin:${pin}`;
    if (drive === 'high' || drive === 'pull-up') {
      const ohms = drive === 'high' ? limits.outputHighOhms : limits.pullUpOhms;
      elements.push({ type: 'source', id, plus: at, minus: ground, volts: logicVolts, ohms: rangeOf(ohms) });
    } else {
      const ohms = drive === 'low' ? limits.outputLowOhms : (limits.pullDownOhms ?? limits.pullUpOhms);
      elements.push({ type: 'resistor', id, a: at, b: ground, ohms: rangeOf(ohms) });
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
        volts: rangeOf(volts),
        ohms: railOhms,
      });
    }
  }
  return { ground, elements };
}

/** Only the three figures: sources and spans must not split the store of solved points. */
function rangeOf(range: Range): Range {
  return { min: range.min, typ: range.typ, max: range.max };
}

function elementsOf(
  placed: Placed,
  node: (net: string) => string,
  state: RegionState,
  fed: boolean,
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
      const { volts, atAmps } = primitive;
      return [{ type: 'diode', id, anode: first, cathode: second, volts, atAmps }];
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
      return [resistor(first, second, primitive.ohms)];
    case 'load':
      // A load draws its current only where something feeds it; alone it would invent a voltage.
      return fed ? [{ type: 'current', id, from: first, to: second, amps: primitive.amps }] : [];
    case 'capacitor':
    case 'transistor':
      return [];
  }
}

/** Share of the track between the first end and the wiper. The ends keep one part in a thousand of the track. */
const wiperPlaces: Readonly<Record<string, number>> = {
  'turned to its first end': 0.001,
  'in the middle': 0.5,
  'turned to its second end': 0.999,
};

function scale(range: Range, by: number): Range {
  return { min: range.min * by, typ: range.typ * by, max: range.max * by };
}

/** Keeps solved points by their network, the oldest dropped first. */
export function rememberPoints(solve: Solve, capacity = 4096): Solve {
  const kept = new Map<string, OperatingPoint>();
  return (network) => {
    const key = JSON.stringify(network);
    const known = kept.get(key);
    if (known) return known;
    const point = solve(network);
    kept.set(key, point);
    if (kept.size > capacity) {
      const oldest = kept.keys().next().value;
      if (oldest !== undefined) kept.delete(oldest);
    }
    return point;
  };
}
