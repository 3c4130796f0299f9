/**
 * Registers of the chip that drive and read pins: which bit is which pin, and what the calls give that lead to them.
 * The names are those of the chips' data sheets: ports of the AVR family (DDRx, PORTx, PINx), the single-cycle block of
 * the RP2040 (datasheet, section 2.3.1.7) and the GPIO matrix of the ESP32 (technical reference manual, section 4.12);
 * the latter two from memory.
 */
import type { Machine } from './machine';
import { type NumberType, numberTypes } from './number-types';
import { timerBit, timerPins } from './timer-registers';
import { type Cell, known, knownSet, newCell, type Register, unknown, type Value } from './value';

const uint8 = numberTypes(16).named('uint8_t') as NumberType;
const uint32 = numberTypes(32).named('uint32_t') as NumberType;

/** Ports by letter, each with the pins of its bits; none on chips without. */
export class Ports {
  readonly byLetter = new Map<string, (number | undefined)[]>();
  /** Pins of a chip that numbers them through in one register. */
  readonly inOne: (number | undefined)[] = [];
  readonly cells = new Map<string, readonly Cell[] | undefined>();
  /** Letter and bit of a pin. */
  readonly places = new Map<number, { readonly letter: string; readonly bit: number }>();

  constructor(ports: Readonly<Record<string, number>>) {
    for (const [name, pin] of Object.entries(ports)) {
      const match = /^(?:P([A-Z])(\d)|GPIO(\d+))$/.exec(name);
      const [, letter, bit, number] = match ?? [];
      if (letter !== undefined && bit !== undefined) {
        const list = this.byLetter.get(letter) ?? new Array<number | undefined>(8).fill(undefined);
        list[Number(bit)] = pin;
        this.byLetter.set(letter, list);
        this.places.set(pin, { letter, bit: Number(bit) });
      } else if (number !== undefined && Number(number) < 32) this.inOne[Number(number)] = pin;
    }
  }

  get none(): boolean {
    return this.byLetter.size === 0 && this.inOne.length === 0;
  }
}

type Kind = Pick<Register, 'changes' | 'by' | 'reads'>;

const kinds: Readonly<Record<string, Kind>> = {
  DDR: { changes: 'direction', by: 'all', reads: false },
  PORT: { changes: 'level', by: 'all', reads: false },
  PIN: { changes: 'level', by: 'flip', reads: true },
};

const level = (by: Register['by']): Kind => ({ changes: 'level', by, reads: false });
const direction = (by: Register['by']): Kind => ({ changes: 'direction', by, reads: false });

const inOne: Readonly<Record<string, Kind>> = {
  gpio_out: level('all'),
  gpio_set: level('set'),
  gpio_clr: level('clear'),
  gpio_togl: level('flip'),
  gpio_oe: direction('all'),
  gpio_oe_set: direction('set'),
  gpio_oe_clr: direction('clear'),
  gpio_oe_togl: direction('flip'),
  gpio_in: { changes: 'level', by: 'flip', reads: true },
  in: { changes: 'level', by: 'flip', reads: true },
  out: level('all'),
  out_w1ts: level('set'),
  out_w1tc: level('clear'),
  enable: direction('all'),
  enable_w1ts: direction('set'),
  enable_w1tc: direction('clear'),
};

/** The cell of a register by its name, where the board's chip has it. */
export function registerCells(machine: Machine, name: string): readonly Cell[] | undefined {
  const { ports } = machine;
  if (ports.byLetter.size === 0 || name.length > 6) return undefined;
  const ready = ports.cells.get(name);
  if (ready !== undefined) return ready;
  if (!/^[DPT]/.test(name)) return undefined;
  const timed = timerPins(machine, name);
  if (timed !== undefined) {
    const timer = [cellOf({ name, pins: timed, changes: 'timer', by: 'all', reads: false }, uint8)];
    ports.cells.set(name, timer);
    return timer;
  }
  const match = /^(DDR|PORT|PIN)([A-Z])$/.exec(name);
  const pins = ports.byLetter.get(match?.[2] ?? '');
  const kind = kinds[match?.[1] ?? ''];
  if (pins === undefined || kind === undefined) return undefined;
  const cells = [cellOf({ name, pins, ...kind }, uint8)];
  ports.cells.set(name, cells);
  return cells;
}

/** `PB5`, `DDB5`, `PORTB5`, `PINB5`: in the headers of the AVR chips, bits of a register by their number. */
export function bitNumber(machine: Machine, name: string): number | undefined {
  if (machine.ports.byLetter.size === 0 || name.length > 7) return undefined;
  const { macros } = machine.platform;
  if (!Object.hasOwn(macros, '__AVR__') && !Object.hasOwn(macros, 'ARDUINO_ARCH_AVR')) return undefined;
  const match = /^(?:P|DD|PORT|PIN)([A-Z])([0-7])$/.exec(name);
  if (match === null) return timerBit(name);
  return match[1] !== undefined && machine.ports.byLetter.has(match[1]) ? Number(match[2]) : undefined;
}

/** Registers of chips that have one for all pins: `sio_hw->gpio_set`, `GPIO.out_w1ts`, `GPIO_OUT_W1TS_REG`. */
export function wideRegister(machine: Machine, base: string, name: string): readonly Cell[] | undefined {
  const { ports } = machine;
  if (ports.inOne.length === 0) return undefined;
  const bare = name.replace(/^GPIO_(OUT|ENABLE)(_W1T[SC])?(_REG)?$/, (_, which, by = '') =>
    `${which}${by}`.toLowerCase(),
  );
  const isOne = base === 'sio_hw' ? /^gpio_/.test(bare) : base === 'GPIO' || (base === '' && bare !== name);
  const kind = isOne && Object.hasOwn(inOne, bare) ? inOne[bare] : undefined;
  if (kind === undefined) return undefined;
  const key = `${base} ${bare}`;
  const cells = ports.cells.get(key) ?? [cellOf({ name: bare, pins: ports.inOne, ...kind }, uint32)];
  ports.cells.set(key, cells);
  return cells;
}

function cellOf(register: Register, type: NumberType): Cell {
  const cell = newCell(unknown(`\`${register.name}\` is a register`, undefined, type, true), type);
  return { ...cell, serial: 0, register };
}

type Compute = (machine: Machine, value: Value | undefined) => Value | undefined;

/** Functions of the core that lead from a pin to its registers. */
export const registerCalls: Readonly<Record<string, Compute>> = {
  digitalPinToPort: (machine, pin) =>
    eachPlace(machine, pin, ({ letter }) => letter.charCodeAt(0) - firstLetter),
  digitalPinToBitMask: (machine, pin) => eachPlace(machine, pin, ({ bit }) => 2 ** bit),
  portOutputRegister: (machine, port) => pointerTo(machine, 'PORT', port),
  portModeRegister: (machine, port) => pointerTo(machine, 'DDR', port),
  portInputRegister: (machine, port) => pointerTo(machine, 'PIN', port),
};

/** Ports count from 1 for A. */
const firstLetter = 64;

function eachPlace(
  machine: Machine,
  pin: Value | undefined,
  turn: (place: { readonly letter: string; readonly bit: number }) => number,
): Value | undefined {
  if (pin?.kind !== 'known') return undefined;
  const found: number[] = [];
  for (const one of pin.values) {
    const place = machine.ports.places.get(one);
    if (place !== undefined) found.push(turn(place));
  }
  return found.length === 0 ? undefined : knownSet(found, uint8, pin.origins);
}

function pointerTo(machine: Machine, prefix: string, port: Value | undefined): Value | undefined {
  if (port?.kind !== 'known') return undefined;
  const cells = port.values.flatMap(
    (one) => registerCells(machine, prefix + String.fromCharCode(firstLetter + one)) ?? [],
  );
  return cells.length === 0 ? undefined : { kind: 'pointer', cells };
}

/** The value of a register out of the states of its pins, where they decide it. */
export function registerValue(machine: Machine, register: Register): Value | undefined {
  const { together } = machine.pinStates;
  if (register.reads || register.changes === 'timer') return undefined;
  if (together === undefined || machine.pinStates.lost) return undefined;
  const values = new Set<number>();
  for (const combination of together) {
    let value = 0;
    for (const [bit, pin] of register.pins.entries()) {
      if (pin === undefined) continue;
      const states = machine.pinStates.in(combination, pin);
      const isOne =
        register.changes === 'direction' ? oneIn(states, driven, free) : oneIn(states, raised, sunk);
      if (isOne === undefined) return undefined;
      if (isOne) value += 2 ** bit;
    }
    values.add(value);
  }
  const [only] = values;
  return only !== undefined && values.size === 1 ? known(only, uint8) : knownSet(values, uint8);
}

// States as bits (see pin-turns.ts): high 1, low 2, input 4, pull-up 8, pull-down 16, an input set to high 32.
const driven = 1 | 2;
const free = 4 | 8 | 16 | 32;
const raised = 1 | 8 | 32;
const sunk = 2 | 4 | 16;

function oneIn(states: number, yes: number, no: number): boolean | undefined {
  if ((states & no) === 0) return true;
  return (states & yes) === 0 ? false : undefined;
}
