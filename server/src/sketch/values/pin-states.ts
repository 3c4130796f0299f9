/**
 * In which states pins can be at the same time. The pins together are one value of the machine's state, a set of
 * alternatives, so that branches and loops join it like any other, and what goes together is not torn apart.
 */
import type { CallFacts } from '../../base/platform';
import type { Machine } from './machine';
import { type Cell, newCell, type StatesValue, type Value } from './value';

/** States of one pin as bits, for sets of them. `inputHigh`: an input whose level was set to high beforehand. */
export const bits = { high: 1, low: 2, input: 4, pullUp: 8, pullDown: 16, inputHigh: 32 } as const;

const toggling = bits.high | bits.low;
const anything = bits.high | bits.low | bits.input | bits.pullUp;
/** Characters of a combination stand for sets of states; this one plus the bits. */
const zero = 32;
const untouched = String.fromCharCode(zero + bits.input);

export const mostTogether = 256;
const mostPins = 64;
/** Changes of combinations after which they are given up. */
const mostWork = 100_000;

/** What a set of states becomes. */
export type Turn = (states: number) => number;

export class PinStates {
  readonly cell: Cell;
  /** Every combination met. */
  readonly seen = new Set<string>(['']);
  /** Pins in the order they were first touched: the places in a combination. */
  readonly pins = new Map<number, number>();
  /** Pins that were made inputs on purpose. */
  readonly inputs = new Set<number>();
  /** States that interrupt handlers may put pins in. */
  readonly fromHandlers = new Map<number, number>();
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
    if (at === undefined) return bits.input;
    return together.reduce((all, one) => all | statesAt(one, at), 0);
  }

  /** The states a pin may be in within one combination. */
  in(combination: string, pin: number): number {
    const at = this.pins.get(pin);
    return at === undefined ? bits.input : statesAt(combination, at);
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
export function changePins(machine: Machine, ways: readonly Change[]): void {
  const { pinStates: states, quiet, stopped } = machine;
  if (states.lost || quiet || stopped || ways.length === 0) return;
  const { together } = states;
  if (together === undefined) {
    states.lost = true;
    return;
  }
  const work = together.length * ways.length;
  states.spent += work;
  machine.spend(work >> 3);
  if (states.spent > mostWork) {
    states.lost = true;
    return;
  }
  const next: string[] = [];
  for (const before of together) {
    for (const way of ways) {
      const after = changed(machine, before, way);
      if (after === undefined) {
        states.lost = true;
        return;
      }
      if (next.includes(after)) continue;
      insert(next, after);
      if (machine.phase !== 'interrupt') states.seen.add(after);
    }
    if (next.length > mostTogether) break;
  }
  if (next.length > mostTogether || states.seen.size > 4 * mostTogether) {
    states.lost = true;
    return;
  }
  const value: StatesValue = { kind: 'states', together: next };
  machine.state.set(states.cell, value);
}

/** Puts a text into a sorted list: there are few, and most are found at the end. */
function insert(list: string[], text: string): void {
  let at = list.length;
  while (at > 0 && (list[at - 1] ?? '') > text) at -= 1;
  list.splice(at, 0, text);
}

/** A combination after a change; undefined where there are more pins than are followed. */
function changed(machine: Machine, before: string, way: Change): string | undefined {
  const { pinStates: states } = machine;
  let after = before;
  for (const [pin, turn] of way) {
    const place = states.placeOf(pin);
    if (place === undefined) return undefined;
    const old = statesAt(after, place);
    const turned = turn(old);
    if (turned !== old || place >= after.length) after = put(after, place, turned);
    if (machine.phase === 'interrupt')
      states.fromHandlers.set(pin, (states.fromHandlers.get(pin) ?? 0) | turned);
  }
  return after;
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

/** A turn by what becomes of each state alone. */
function each(table: (state: number) => number): Turn {
  const made = Array.from({ length: 64 }, (_, states) => {
    let turned = 0;
    for (let bit = 1; bit < 64; bit *= 2) if ((states & bit) !== 0) turned |= table(bit);
    return turned;
  });
  return (states) => made[states] ?? anything;
}

const isHigh = bits.high | bits.pullUp | bits.inputHigh;
const isOutput = bits.high | bits.low;

/** The registers of the AVR: direction and level decide together. */
export const avr = {
  output: each((one) => ((one & isHigh) !== 0 ? bits.high : bits.low)),
  undriven: each((one) => ((one & isHigh) !== 0 ? bits.pullUp : bits.input)),
  high: each((one) => ((one & isOutput) !== 0 ? bits.high : bits.pullUp)),
  low: each((one) => ((one & isOutput) !== 0 ? bits.low : bits.input)),
  flip: each((one) => {
    if (one === bits.high) return bits.low;
    if (one === bits.low) return bits.high;
    return (one & isHigh) !== 0 ? bits.input : bits.pullUp;
  }),
};

/** Other chips: a level set on an input waits, and what an output starts with is the core's choice. */
export const other = {
  output: each((one) => ((one & isOutput) !== 0 ? one : one === bits.input ? bits.low : toggling)),
  undriven: each(() => bits.input),
  high: each((one) => ((one & isOutput) !== 0 ? bits.high : one === bits.input ? bits.inputHigh : one)),
  low: each((one) => ((one & isOutput) !== 0 ? bits.low : one === bits.inputHigh ? bits.input : one)),
  flip: each((one) => {
    if (one === bits.high) return bits.low;
    return one === bits.low ? bits.high : one | bits.inputHigh;
  }),
};

export type Turns = typeof avr;

export function turnsOf(machine: Machine): Turns {
  const { macros } = machine.platform;
  return Object.hasOwn(macros, '__AVR__') || Object.hasOwn(macros, 'ARDUINO_ARCH_AVR') ? avr : other;
}

const to = (states: number): Turn => each(() => states);
const become = {
  toggling: to(toggling),
  input: to(bits.input),
  pullUp: to(bits.pullUp),
  pullDown: to(bits.pullDown),
  anything: to(anything),
  shared: to(bits.low | bits.input | bits.pullUp),
  released: each((one) => one | bits.input | bits.low),
  quiet: each((one) => ((one & isOutput) !== 0 ? bits.low : one)),
  either: each((one) => ((one & isOutput) !== 0 ? toggling : one | bits.pullUp | bits.input)),
};

/** Both turns, where either may happen. */
export function eitherTurn(a: Turn, b: Turn): Turn {
  return (states) => a(states) | b(states);
}

function turnOf(machine: Machine, fact: CallFacts, value: Value | undefined): Turn | undefined {
  const turns = turnsOf(machine);
  switch (fact.action) {
    case 'mode':
      return modeTurn(machine, turns, fact, value);
    case 'write':
      return levelTurn(turns, value) ?? become.either;
    case 'pwm': {
      if (value?.kind === 'known' && value.values.length === 1 && value.values[0] === 0 && turns === avr)
        return to(bits.low);
      return become.toggling;
    }
    case 'tone':
    case 'servo':
    case 'dac':
      return become.toggling;
    case 'tone-off':
      return become.quiet;
    case 'release':
      return become.released;
    case 'bus':
    case 'device':
      return fact.pinsOf !== undefined && fact.mode === undefined ? undefined : takenTurn(fact);
    default:
      return fact.mode === undefined ? undefined : takenTurn(fact);
  }
}

function takenTurn(fact: CallFacts): Turn {
  if (fact.mode === 'output') return become.toggling;
  if (fact.mode === 'input') return become.input;
  if (fact.mode === 'input-pullup') return become.pullUp;
  if (fact.mode === 'input-pulldown') return become.pullDown;
  return fact.roles?.some((role) => role.startsWith('i2c')) === true ? become.shared : become.anything;
}

function modeTurn(machine: Machine, turns: Turns, fact: CallFacts, value: Value | undefined): Turn {
  const modes =
    fact.mode !== undefined
      ? [fact.mode]
      : value?.kind === 'known'
        ? value.values.map((one) => machine.platform.modes[one])
        : [undefined];
  let turn: Turn | undefined;
  for (const mode of modes) {
    let one: Turn = become.anything;
    if (mode === 'output') one = turns.output;
    else if (mode === 'input') one = become.input;
    else if (mode === 'input-pullup') one = become.pullUp;
    else if (mode === 'input-pulldown') one = become.pullDown;
    turn = turn === undefined ? one : eitherTurn(turn, one);
  }
  return turn ?? become.anything;
}

function levelTurn(turns: Turns, value: Value | undefined): Turn | undefined {
  if (value?.kind !== 'known') return undefined;
  const low = value.values.includes(0);
  const high = value.values.some((one) => one !== 0);
  if (low && high) return eitherTurn(turns.low, turns.high);
  return high ? turns.high : turns.low;
}
