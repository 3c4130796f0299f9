/** Registers of AVR chips that are written by name, with what the write changes where its form tells it. */
import type { RegisterHabit } from '../../base/habit';
import type { Expression } from '../form/ast';
import type { Bodies } from './bodies';

// Names of the registers in the datasheets of the ATmega chips that sketches are written for.
const register =
  /^(?:TCCR\d[A-C]|TIMSK\d|TIFR\d|OCR\d[A-C][LH]?|ICR\d[LH]?|TCNT\d[LH]?|MCUS?R|MCUCR|WDTCSR|ADMUX|ADCSR[AB]|EIMSK|EIFR|EICR[AB]|PCICR|PCIFR|PCMSK\d|SMCR|PRR\d?|CLKPR|ACSR|SPCR|SPSR|SPDR|UCSR\d[A-C]|UBRR\d[LH]?|UDR\d|TWBR|TWSR|TWDR|TWCR|TWAR|GTCCR|ASSR|DIDR\d|PORT[A-L]|DDR[A-L])$/;

// Bits of the timer 0 and watchdog registers: ATmega328P datasheet, sections on timer 0 and on the watchdog.
const bits: Readonly<Record<string, number>> = {
  CS00: 0,
  CS01: 1,
  CS02: 2,
  WGM00: 0,
  WGM01: 1,
  WGM02: 3,
  COM0A0: 6,
  COM0A1: 7,
  COM0B0: 4,
  COM0B1: 5,
  WDP0: 0,
  WDP1: 1,
  WDP2: 2,
  WDE: 3,
  WDCE: 4,
  WDP3: 5,
  WDIE: 6,
  WDRF: 3,
};

interface Change {
  readonly keep: number;
  readonly set: number;
}

export function registersOf(bodies: Bodies): RegisterHabit[] {
  const found: RegisterHabit[] = [];
  for (const body of bodies.all) {
    for (const set of body.notes.sets) {
      const { name, operator, value, whole } = set;
      if (!whole || !register.test(name) || body.item.locals.includes(name)) continue;
      if (bodies.globals.has(name) || bodies.program.macros.has(name)) continue;
      const change = value === undefined ? undefined : changeOf(name, operator, value);
      const span = bodies.span(body, set);
      found.push({ kind: 'register', name, function: body.name, span, ...(change && { change }) });
    }
  }
  return found;
}

function changeOf(own: string, operator: string, value: Expression): Change | undefined {
  const right = partsOf(own, value);
  if (right === undefined) return undefined;
  if (operator === '') return right;
  if (right.keep !== 0) return undefined;
  if (operator === '|') return { keep: 0xff, set: right.set };
  if (operator === '&') return { keep: right.set & 0xff, set: 0 };
  return undefined;
}

/** A value as bits kept of the register's old ones and bits set. */
function partsOf(own: string, value: Expression): Change | undefined {
  switch (value.kind) {
    case 'number':
      return { keep: 0, set: value.value };
    case 'name': {
      if (value.name === own) return { keep: 0xff, set: 0 };
      const bit = bits[value.name];
      return bit === undefined ? undefined : { keep: 0, set: bit };
    }
    case 'cast':
      return partsOf(own, value.operand);
    case 'unary': {
      const inner = partsOf(own, value.operand);
      return inner === undefined || inner.keep !== 0 || value.operator !== '~'
        ? undefined
        : { keep: 0, set: ~inner.set };
    }
    case 'call': {
      const [argument] = value.arguments;
      if (value.callee.kind !== 'name' || !/^(?:_BV|bit)$/.test(value.callee.name) || argument === undefined)
        return undefined;
      const inner = partsOf(own, argument);
      return inner === undefined || inner.keep !== 0 ? undefined : { keep: 0, set: 1 << inner.set };
    }
    case 'binary': {
      const left = partsOf(own, value.left);
      const right = partsOf(own, value.right);
      return left === undefined || right === undefined ? undefined : joined(value.operator, left, right);
    }
    default:
      return undefined;
  }
}

function joined(operator: string, left: Change, right: Change): Change | undefined {
  if (operator === '|') return { keep: left.keep | right.keep, set: left.set | right.set };
  if (operator === '&') {
    if (left.keep === 0) return { keep: right.keep & left.set, set: right.set & left.set };
    return right.keep === 0 ? { keep: left.keep & right.set, set: left.set & right.set } : undefined;
  }
  if (left.keep !== 0 || right.keep !== 0) return undefined;
  if (operator === '<<') return { keep: 0, set: left.set << right.set };
  return operator === '+' ? { keep: 0, set: left.set + right.set } : undefined;
}
