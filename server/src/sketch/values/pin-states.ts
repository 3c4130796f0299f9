/**
 * In which states pins can be at the same time. The pins together are one value of the machine's state, a set of
 * alternatives, so that branches and loops join it like any other, and what goes together is not torn apart.
 */
import type { CallFacts } from '../../base/platform';
import { loosen, withoutPlaces, zero } from './combinations';
import type { Machine } from './machine';
import { become, bits, isOutput, type Turn, toggling, turnOf } from './pin-turns';
import { type Cell, newCell, type StatesValue, type Value } from './value';

const untouched = String.fromCharCode(zero + bits.input);

export const mostTogether = 256;
/** Where much was spent already. */
export const fewTogether = 16;
const mostPins = 96;
/** Changes of combinations after which few are kept; after twice as many, no pins are told apart any more. */
const mostWork = 20_000;

export class PinStates {
  readonly cell: Cell;
  /** Every combination met. */
  seen = new Set<string>(['']);
  /** Pins in the order they were first touched: the places in a combination. */
  readonly pins = new Map<number, number>();
  /** Pins that were made inputs on purpose. */
  readonly inputs = new Set<number>();
  /** Pins that a timer may drive by itself. */
  readonly timed = new Set<number>();
  /** States that interrupt handlers may put pins in. */
  readonly fromHandlers = new Map<number, number>();
  /** Pins that are not told apart from the others any more, with all states they may be in. */
  readonly loose = new Map<number, number>();
  private readonly reduced = new WeakMap<
    readonly string[],
    { readonly size: number; readonly together: readonly string[] }
  >();
  /** Combinations that were changed, over the whole analysis. */
  spent = 0;
  /** Nothing is known any more of what goes together. */
  lost = false;

  constructor() {
    this.cell = newCell({ kind: 'states', together: [''] });
    this.cell.serial = 0;
  }

  get together(): readonly string[] | undefined {
    const { value } = this.cell;
    return value.kind === 'states' ? value.together : undefined;
  }

  /** The states a pin may be in now; undefined where nothing is known. */
  of(pin: number): number | undefined {
    const { together } = this;
    const at = this.pins.get(pin);
    if (together === undefined) return undefined;
    const loose = this.loose.get(pin);
    if (loose !== undefined) return loose;
    if (at === undefined) return bits.input;
    return together.reduce((all, one) => all | statesAt(one, at), 0);
  }

  /** The states a pin may be in within one combination. */
  in(combination: string, pin: number): number {
    const at = this.pins.get(pin);
    return this.loose.get(pin) ?? (at === undefined ? bits.input : statesAt(combination, at));
  }

  /** At most so many combinations in the place of these: pins are loosened until there is room again. */
  held(given: readonly string[], most: number): readonly string[] {
    if (given.length <= most) return given;
    const together = this.withoutLoose(given);
    if (together.length <= most) return together;
    const { together: fewer, places } = loosen(together, Math.max(1, most >> 4), untouched);
    this.spent += together.length * places.size;
    for (const [pin, place] of this.pins) {
      let states = places.get(place);
      if (states === undefined) continue;
      // Branches that are still open hold states from before.
      for (const one of this.seen) states |= statesAt(one, place);
      this.loose.set(pin, states);
    }
    return [...fewer].sort();
  }

  /** The same list comes again with every branch that starts from it. */
  private withoutLoose(given: readonly string[]): readonly string[] {
    const { size } = this.loose;
    if (size === 0) return given;
    const ready = this.reduced.get(given);
    if (ready?.size === size) return ready.together;
    const places = [...this.loose.keys()].map((pin) => this.pins.get(pin) ?? 0);
    const together = withoutPlaces(given, places, untouched);
    this.spent += given.length;
    this.reduced.set(given, { size, together });
    return together;
  }

  placeOf(pin: number): number | undefined {
    let place = this.pins.get(pin);
    if (place !== undefined) return place;
    if (this.pins.size >= mostPins) return undefined;
    place = this.pins.size;
    this.pins.set(pin, place);
    return place;
  }
}

export function statesAt(combination: string, place: number): number {
  const code = combination.charCodeAt(place);
  return Number.isNaN(code) ? bits.input : code - zero;
}

function put(combination: string, place: number, states: number): string {
  const padded = combination.padEnd(place + 1, untouched);
  return padded.slice(0, place) + String.fromCharCode(zero + states) + padded.slice(place + 1);
}

/** Alternatives of what happens at once: each a list of pins with what becomes of their states. */
export type Change = readonly (readonly [pin: number, turn: Turn])[];

/** Changes the state of pins: one of several ways, all pins of a way at once. */
export function changePins(machine: Machine, given: readonly Change[]): void {
  const { pinStates: states, quiet, stopped } = machine;
  if (states.lost || quiet || stopped || given.length === 0) return;
  const ways = states.loose.size === 0 ? given : given.map((way) => changeLoose(machine, way));
  if (ways.every((way) => way.length === 0)) return;
  if (states.together === undefined) {
    states.lost = true;
    return;
  }
  const most = states.spent > 2 * mostWork ? 1 : states.spent > mostWork ? fewTogether : mostTogether;
  const together = states.held(states.together, most);
  const work = together.length * ways.length;
  states.spent += work;
  machine.spend(work >> 3);
  let next: string[] = [];
  const met = work > 1 ? new Set<string>() : undefined;
  for (const before of together) {
    if (next.length > 2 * mostTogether) next = [...states.held(next, most)];
    for (const way of ways) {
      const after = changed(machine, before, way);
      if (after === undefined) {
        states.lost = true;
        return;
      }
      if (met?.has(after)) continue;
      met?.add(after);
      next.push(after);
    }
  }
  const kept = states.held(next, most);
  if (machine.phase !== 'interrupt') for (const one of kept) states.seen.add(one);
  if (states.seen.size > 2 * mostTogether) states.seen = new Set(states.held([...states.seen], mostTogether));
  const value: StatesValue = { kind: 'states', together: kept.length > 1 ? [...kept].sort() : kept };
  machine.state.set(states.cell, value);
}

/** Changes the loose pins of a way, and gives the others: of a loose pin every state it ever has is kept. */
function changeLoose(machine: Machine, way: Change): Change {
  const { pinStates: states } = machine;
  return way.filter(([pin, turn]) => {
    const old = states.loose.get(pin);
    if (old === undefined) return true;
    const turned = withTimer(states, pin, old | turn(old));
    states.loose.set(pin, turned);
    if (machine.phase === 'interrupt') states.fromHandlers.set(pin, turned);
    return false;
  });
}

/** The states of the pins with few combinations kept, or in the end only one; any other value as it is. */
export function apart(machine: Machine, value: Value, last: boolean): Value {
  if (value.kind !== 'states') return value;
  return { kind: 'states', together: machine.pinStates.held(value.together, last ? 1 : fewTogether) };
}

/** A combination after a change; undefined where there are more pins than are followed. */
function changed(machine: Machine, before: string, way: Change): string | undefined {
  const { pinStates: states } = machine;
  let after = before;
  for (const [pin, turn] of way) {
    const place = states.placeOf(pin);
    if (place === undefined) return undefined;
    const old = statesAt(after, place);
    const turned = withTimer(states, pin, turn(old));
    if (turned !== old || place >= after.length) after = put(after, place, turned);
    if (machine.phase === 'interrupt')
      states.fromHandlers.set(pin, (states.fromHandlers.get(pin) ?? 0) | turned);
  }
  return after;
}

/** The level of an output that a timer drives is not known. */
function withTimer(states: PinStates, pin: number, turned: number): number {
  return states.timed.has(pin) && (turned & isOutput) !== 0 ? turned | toggling : turned;
}

/** From here on a timer may drive the pin. */
export function driveByTimer(machine: Machine, pin: number): void {
  if (machine.quiet || machine.stopped) return;
  machine.pinStates.timed.add(pin);
  changePins(machine, [[[pin, (states) => states]]]);
}

/** What a call does to the state of its pin. */
export function changeByCall(machine: Machine, fact: CallFacts, pin: Value, value: Value | undefined): void {
  if (machine.pinStates.lost) return;
  const turn = turnOf(machine, fact, value);
  if (turn === undefined) return;
  if (turn === become.input && fact.action === 'mode' && pin.kind === 'known') {
    for (const one of pin.values) machine.pinStates.inputs.add(one);
  }
  if (pin.kind !== 'known') {
    if (!machine.quiet && !machine.stopped) machine.pinStates.lost = true;
    return;
  }
  changePins(
    machine,
    pin.values.filter((one) => one >= 0 && one < 256).map((one) => [[one, turn]]),
  );
}
