/** Widths and signs of the integer types, and the arithmetic of single numbers in them. */
import type { LiteralType } from '../form/ast';

export interface NumberType {
  readonly name: string;
  readonly bits: number;
  readonly signed: boolean;
  readonly float: boolean;
}

const integer = (name: string, bits: number, signed: boolean): NumberType => ({
  name,
  bits,
  signed,
  float: false,
});

export const bool = integer('bool', 1, false);
export const real: NumberType = { name: 'float', bits: 32, signed: true, float: true };
const int8 = integer('int8_t', 8, true);
const uint8 = integer('uint8_t', 8, false);
const int16 = integer('int16_t', 16, true);
const uint16 = integer('uint16_t', 16, false);
const int32 = integer('int32_t', 32, true);
const uint32 = integer('uint32_t', 32, false);
const int64 = integer('int64_t', 64, true);
const uint64 = integer('uint64_t', 64, false);

/** The types of one platform, by the names that text uses. */
export interface NumberTypes {
  readonly int: NumberType;
  readonly unsigned: NumberType;
  readonly long: NumberType;
  readonly unsignedLong: NumberType;
  /** Undefined for what is no number type. */
  named(name: string): NumberType | undefined;
  literal(type: LiteralType, value: number): NumberType;
}

/** `int` has `intBits`; `long` has 32 on both kinds of platform (AVR and the usual 32-bit controllers). */
export function numberTypes(intBits: 16 | 32): NumberTypes {
  const int = intBits === 16 ? int16 : int32;
  const unsigned = intBits === 16 ? uint16 : uint32;
  const table: Readonly<Record<string, NumberType>> = {
    bool,
    boolean: bool,
    byte: uint8,
    word: uint16,
    char: int8,
    'signed char': int8,
    'unsigned char': uint8,
    int8_t: int8,
    uint8_t: uint8,
    int16_t: int16,
    uint16_t: uint16,
    int32_t: int32,
    uint32_t: uint32,
    int64_t: int64,
    uint64_t: uint64,
    size_t: intBits === 16 ? uint16 : uint32,
    uintptr_t: intBits === 16 ? uint16 : uint32,
    intptr_t: int,
    ptrdiff_t: int,
    short: int16,
    'unsigned short': uint16,
    int,
    signed: int,
    unsigned,
    long: int32,
    'unsigned long': uint32,
    'long long': int64,
    'unsigned long long': uint64,
    float: real,
    double: real,
    'long double': real,
    pin_size_t: uint8,
  };
  const named = (name: string): NumberType | undefined => {
    const direct = table[name.startsWith('std::') ? name.slice(5) : name];
    if (direct !== undefined && Object.hasOwn(table, name.startsWith('std::') ? name.slice(5) : name))
      return direct;
    if (!name.includes(' ')) return undefined;
    // Words of a type come in any order: `long unsigned int`, `int short`.
    const words = name.split(' ');
    const base = words.filter((word) => !['int', 'signed', 'unsigned', 'const', 'volatile'].includes(word));
    const sign = words.includes('unsigned') ? ['unsigned'] : [];
    const rest = base.length === 0 ? (sign.length === 0 ? ['int'] : []) : base;
    const sorted = [...sign, ...rest].join(' ');
    return sorted === name ? undefined : table[sorted];
  };
  const literal = (type: LiteralType, value: number): NumberType => {
    if (type === 'float') return real;
    if (type === 'char') return int8;
    if (type === 'bool') return bool;
    if (type === 'unsigned') return value < 2 ** unsigned.bits ? unsigned : uint32;
    if (type === 'unsigned long') return value < 2 ** 32 ? uint32 : uint64;
    if (type === 'int' && value < 2 ** (int.bits - 1)) return int;
    return value < 2 ** 31 ? int32 : value < 2 ** 32 && type === 'int' ? uint32 : int64;
  };
  return { int, unsigned, long: int32, unsignedLong: uint32, named, literal };
}

/** The value that a type holds after it was given `value`. */
export function wrap(value: number, type: NumberType): number {
  if (type.float) return value;
  if (type === bool) return value === 0 ? 0 : 1;
  const whole = Math.trunc(value);
  if (!Number.isFinite(whole)) return 0;
  if (type.bits > 32) return whole + 0;
  const size = 2 ** type.bits;
  if (type.signed) {
    if (whole >= -size / 2 && whole < size / 2) return whole + 0;
    const low = ((whole % size) + size) % size;
    return low >= size / 2 ? low - size : low;
  }
  return whole >= 0 && whole < size ? whole + 0 : ((whole % size) + size) % size;
}

/** The type of a sum or the like of two numbers: the usual arithmetic conversions. */
export function commonType(a: NumberType, b: NumberType, int: NumberType): NumberType {
  if (a.float || b.float) return real;
  const left = promoted(a, int);
  const right = promoted(b, int);
  if (left.bits !== right.bits) return left.bits > right.bits ? left : right;
  return left.signed ? right : left;
}

/** Types below `int` become `int`. */
export function promoted(type: NumberType, int: NumberType): NumberType {
  return type.float || type.bits >= int.bits ? (type.bits === int.bits || type.float ? type : type) : int;
}

/** One arithmetic or bitwise operation in a type; undefined where it has no value. */
export function reckon(operator: string, a: number, b: number, type: NumberType): number | undefined {
  switch (operator) {
    case '+':
      return wrap(a + b, type);
    case '-':
      return wrap(a - b, type);
    case '*':
      return wrap(a * b, type);
    case '/':
      return b === 0 ? undefined : wrap(a / b, type);
    case '%':
      return b === 0 || type.float ? undefined : wrap(a % b, type);
    case '<<':
      return b < 0 || b > 63 ? undefined : wrap(a * 2 ** b, type);
    case '>>':
      return b < 0 || b > 63 ? undefined : wrap(Math.floor(a / 2 ** b), type);
    case '&':
    case '|':
    case '^':
      return type.float ? undefined : wrap(bitwise(operator, a, b, type.bits), type);
    default:
      return undefined;
  }
}

function bitwise(operator: '&' | '|' | '^', a: number, b: number, bits: number): number {
  if (bits <= 32) {
    if (operator === '&') return (a & b) >>> 0;
    return operator === '|' ? (a | b) >>> 0 : (a ^ b) >>> 0;
  }
  const left = BigInt(a);
  const right = BigInt(b);
  if (operator === '&') return Number(left & right);
  return Number(operator === '|' ? left | right : left ^ right);
}

/** One comparison; undefined for another operator. */
export function compare(operator: string, a: number, b: number): boolean | undefined {
  switch (operator) {
    case '==':
      return a === b;
    case '!=':
      return a !== b;
    case '<':
      return a < b;
    case '<=':
      return a <= b;
    case '>':
      return a > b;
    case '>=':
      return a >= b;
    default:
      return undefined;
  }
}
