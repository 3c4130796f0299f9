/**
 * Joins what the sketch does with what is wired: a view of every pin, every primitive on its nets, and the regions
 * that hang together between the rails. Regions are what gets solved, so a change in one leaves the others' answers
 * standing.
 */
import { type BoardPin, type Build, type Net, numbersOf, type Primitive, type Wire } from '../base/build';
import { levelOnInput } from '../base/level-on-input';
import type { PinAction, PinMode, PinUse, SketchFacts } from '../base/pin-use';
import type { Drive, PinView, Placed, Region } from '../rules/subject';

/** Net ids by `pin id` and by `part.terminal`. */
export interface NetIndex {
  readonly byPin: ReadonlyMap<string, Net>;
  readonly byTerminal: ReadonlyMap<string, Net>;
}

/** Finds nets by what is on them. A pin or terminal without a wire is a net of its own and is not listed. */
export function indexNets(build: Build): NetIndex {
  const byPin = new Map<string, Net>();
  const byTerminal = new Map<string, Net>();
  for (const net of build.nets) {
    for (const pin of net.pins) byPin.set(pin, net);
    for (const end of net.terminals) byTerminal.set(`${end.part}.${end.terminal}`, net);
  }
  return { byPin, byTerminal };
}

/** Calls that drive their pin high and low in turn. */
const bothLevels: ReadonlySet<PinAction> = new Set(['tone', 'servo', 'device', 'bus', 'transfer']);

/** What the output stage of a pin can do once the sketch runs. */
function drivesOf(uses: readonly PinUse[], modes: readonly PinMode[], pullsByLevel: boolean): Drive[] {
  const drives = new Set<Drive>();
  const takesOutput = uses.some(
    (use) => use.action === 'pwm' || use.action === 'tone' || use.action === 'servo',
  );
  if (modes.includes('output') || takesOutput) {
    let written = false;
    for (const use of uses) {
      if (use.action === 'write' || use.action === 'pwm') {
        written = true;
        const full = use.action === 'pwm' ? 255 : 1;
        const values = use.value?.kind === 'known' ? use.value.values : [0, full];
        // Between nothing and full scale a PWM pin is low and high in turn.
        if (values.some((value) => value !== 0)) drives.add('high');
        if (values.some((value) => value === 0 || value < full)) drives.add('low');
      } else if (use.drivesOnly) {
        written = true;
        drives.add('low').add('input');
      } else if (bothLevels.has(use.action)) {
        written = true;
        drives.add('high').add('low');
      }
    }
    if (!written) drives.add('low');
  } else if (pullsByLevel && uses.some((use) => use.action === 'write' && mayBeHigh(use))) {
    // Without OUTPUT a written HIGH only switches the pull-up on, on the cores that work that way.
    drives.add('pull-up');
  }
  if (modes.includes('input-pullup')) drives.add('pull-up');
  if (modes.includes('input-pulldown')) drives.add('pull-down');
  if (modes.includes('input') || drives.size === 0) drives.add('input');
  return [...drives];
}

function mayBeHigh(use: PinUse): boolean {
  return use.value?.kind !== 'known' || use.value.values.some((value) => value !== 0);
}

/** A view of every pin of the board. */
export function viewPins(facts: SketchFacts, build: Build, nets: NetIndex): PinView[] {
  const usesByNumber = new Map<number, PinUse[]>();
  for (const use of facts.uses) {
    if (use.pins.kind !== 'known') continue;
    for (const number of use.pins.values) {
      const list = usesByNumber.get(number);
      if (list) list.push(use);
      else usesByNumber.set(number, [use]);
    }
  }
  const wiresByPin = new Map<string, Wire[]>();
  for (const wire of build.wires) {
    for (const end of wire.ends) {
      if (end.kind !== 'pin') continue;
      const list = wiresByPin.get(end.pin);
      if (list) list.push(wire);
      else wiresByPin.set(end.pin, [wire]);
    }
  }
  const onBoardByPin = new Map<string, string[]>();
  for (const part of build.board.onBoard) {
    for (const end of new Set(part.inside.flatMap((primitive) => primitive.ends))) {
      onBoardByPin.set(end, [...(onBoardByPin.get(end) ?? []), part.id]);
    }
  }
  // Of a core that nobody looked at, the kinder thing is believed.
  const effect = levelOnInput(build.board.platform);
  const pullsByLevel = effect !== 'nothing' && effect !== 'drives-low';
  return build.board.pins.map((pin) => {
    const uses = numbersOf(pin).flatMap((number) => usesByNumber.get(number) ?? []);
    const modes = [...new Set(uses.flatMap((use) => use.modes ?? []))];
    return {
      pin,
      net: nets.byPin.get(pin.id) ?? { id: pin.id, pins: [pin.id], terminals: [], wires: [] },
      uses,
      modes,
      // A pin that only reads voltages neither drives nor pulls, whatever the sketch asks of it.
      drives: pin.type === 'analog-input' ? ['input'] : drivesOf(uses, modes, pullsByLevel),
      wires: wiresByPin.get(pin.id) ?? [],
      onBoard: onBoardByPin.get(pin.id) ?? [],
    };
  });
}

/** Puts every primitive of the parts and of the board on its nets. */
export function placePrimitives(build: Build, nets: NetIndex): Placed[] {
  const placed: Placed[] = [];
  for (const part of build.parts) {
    const netOf = (terminal: string) => {
      const name = `${part.id}.${terminal}`;
      return nets.byTerminal.get(name)?.id ?? name;
    };
    for (const primitive of part.inside) placed.push(place(part.id, primitive, false, netOf));
  }
  const pinIds = new Set(build.board.pins.map((pin) => pin.id));
  for (const part of build.board.onBoard) {
    // An end that is no pin is a node inside the on-board part.
    const netOf = (end: string) => (pinIds.has(end) ? (nets.byPin.get(end)?.id ?? end) : `${part.id}~${end}`);
    for (const primitive of part.inside) placed.push(place(part.id, primitive, true, netOf));
  }
  return placed;
}

function place(part: string, primitive: Primitive, onBoard: boolean, netOf: (end: string) => string): Placed {
  const third = thirdTerminal(primitive);
  return {
    id: `${part}/${primitive.id}`,
    part,
    onBoard,
    primitive,
    nets: [netOf(primitive.ends[0]), netOf(primitive.ends[1])],
    ...(third !== undefined && { third: netOf(third) }),
  };
}

/** The terminal besides the two ends, where the primitive has one. */
export function thirdTerminal(primitive: Primitive): string | undefined {
  switch (primitive.type) {
    case 'potentiometer':
      return primitive.wiper;
    case 'transistor':
      return primitive.control;
    case 'logic-output':
      return primitive.supply;
    default:
      return undefined;
  }
}

/** Nets a placed primitive touches. */
export function netsOf(element: Placed): string[] {
  return element.third === undefined ? [...element.nets] : [...element.nets, element.third];
}

/** Pins that hold their net at a voltage: grounds, and supplies that give volts. */
export function isRail(pin: BoardPin): boolean {
  return pin.type === 'ground' || (pin.type === 'supply' && pin.volts !== undefined);
}

/** Rail pin id by net id. */
export function findRails(pins: readonly PinView[]): Record<string, string> {
  const rails: Record<string, string> = {};
  for (const view of pins) {
    if (!isRail(view.pin)) continue;
    // A ground on the same net as a supply is a short; the ground wins, and the supply's source shows the current.
    if (rails[view.net.id] === undefined || view.pin.type === 'ground') rails[view.net.id] = view.pin.id;
  }
  return rails;
}

/** Cuts the build into regions: nets joined by direct-current paths, up to the rails. */
export function findRegions(
  pins: readonly PinView[],
  placed: readonly Placed[],
  rails: Readonly<Record<string, string>>,
): Region[] {
  const parent = new Map<string, string>();
  const root = (net: string): string => {
    let at = net;
    for (;;) {
      const up = parent.get(at);
      if (up === undefined || up === at) return at;
      at = up;
    }
  };
  const add = (net: string) => {
    if (!parent.has(net)) parent.set(net, net);
  };
  for (const element of placed) {
    const free = netsOf(element).filter((net) => rails[net] === undefined);
    for (const net of free) add(net);
    // A capacitor blocks direct current, so it joins no operating points.
    if (element.primitive.type === 'capacitor') continue;
    for (const net of free) parent.set(root(net), root(free[0] ?? net));
  }
  for (const view of pins) {
    if (view.net.wires.length > 0 && rails[view.net.id] === undefined) add(view.net.id);
  }
  const groups = new Map<string, { nets: string[]; pins: string[]; elements: Placed[] }>();
  const groupOf = (net: string) => {
    const key = root(net);
    let group = groups.get(key);
    if (!group) {
      group = { nets: [], pins: [], elements: [] };
      groups.set(key, group);
    }
    return group;
  };
  for (const net of parent.keys()) groupOf(net).nets.push(net);
  for (const view of pins) {
    if (view.pin.type !== 'io' && view.pin.type !== 'analog-input' && view.pin.type !== 'reset') continue;
    if (parent.has(view.net.id)) groupOf(view.net.id).pins.push(view.pin.id);
  }
  const betweenRails: Placed[] = [];
  for (const element of placed) {
    const free = netsOf(element).find((net) => rails[net] === undefined);
    if (free === undefined) betweenRails.push(element);
    else groupOf(free).elements.push(element);
  }
  const regions: Region[] = [...groups.values()];
  for (const element of betweenRails) regions.push({ nets: [], pins: [], elements: [element] });
  // A pin wired straight to a rail has no net of its own, yet its output stage can fight the rail.
  for (const view of pins) {
    if (view.pin.number !== undefined && rails[view.net.id] !== undefined && view.net.wires.length > 0) {
      regions.push({ nets: [], pins: [view.pin.id], elements: [] });
    }
  }
  return regions;
}
