/** What calls and registers make of the state of a pin: turns of sets of states. */
import { levelOnInput } from '../../base/level-on-input';
import type { CallFacts } from '../../base/platform';
import type { Machine } from './machine';
import type { Value } from './value';

/** States of one pin as bits, for sets of them. `inputHigh`: an input whose level was set to high beforehand. */
export const bits = { high: 1, low: 2, input: 4, pullUp: 8, pullDown: 16, inputHigh: 32 } as const;

export const toggling = bits.high | bits.low;
const anything = bits.high | bits.low | bits.input | bits.pullUp;

/** What a set of states becomes. */
export type Turn = (states: number) => number;

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
export const isOutput = bits.high | bits.low;

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

/** Cores whose digitalWrite switches the pull-up of an input, on chips whose latch and pull are apart. */
const pulling = {
  ...other,
  high: each((one) => ((one & isOutput) !== 0 ? bits.high : bits.pullUp)),
  low: each((one) => ((one & isOutput) !== 0 ? bits.low : bits.input)),
};

/** Those whose digitalWrite chooses between both pulls. */
const turning = {
  ...pulling,
  low: each((one) => ((one & isOutput) !== 0 ? bits.low : bits.pullDown)),
};

export type Turns = typeof avr;

export function turnsOf(machine: Machine): Turns {
  const { macros } = machine.platform;
  return Object.hasOwn(macros, '__AVR__') || Object.hasOwn(macros, 'ARDUINO_ARCH_AVR') ? avr : other;
}

/** The turns of the core's own calls, which may do more than the registers. */
function turnsOfCalls(machine: Machine): Turns {
  const turns = turnsOf(machine);
  if (turns === avr) return avr;
  const effect = levelOnInput(machine.platform);
  if (effect === 'switches-pull') return pulling;
  return effect === 'turns-pull' ? turning : other;
}

const to = (states: number): Turn => each(() => states);
export const become = {
  toggling: to(toggling),
  input: to(bits.input),
  pullUp: to(bits.pullUp),
  pullDown: to(bits.pullDown),
  anything: to(anything),
  shared: to(bits.low | bits.input | bits.pullUp),
  pulling: to(bits.low | bits.input),
  released: each((one) => one | bits.input | bits.low),
  quiet: each((one) => ((one & isOutput) !== 0 ? bits.low : one)),
  either: each((one) => ((one & isOutput) !== 0 ? toggling : one | bits.pullUp | bits.input)),
};

/** Both turns, where either may happen. */
export function eitherTurn(a: Turn, b: Turn): Turn {
  return (states) => a(states) | b(states);
}

/** What a call makes of the state of its pin; undefined where it leaves that alone. */
export function turnOf(machine: Machine, fact: CallFacts, value: Value | undefined): Turn | undefined {
  const turns = turnsOfCalls(machine);
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
  if (fact.drivesOnly) return become.pulling;
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
