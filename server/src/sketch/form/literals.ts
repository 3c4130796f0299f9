/** Number and character literals of C++ text. */
import type { LiteralType } from './ast';

export interface Literal {
  readonly value: number;
  readonly type: LiteralType;
}

const digits: readonly [RegExp, number, number][] = [
  [/^0[xX][0-9a-fA-F]+$/, 16, 2],
  [/^0[bB][01]+$/, 2, 2],
  [/^0[0-7]+$/, 8, 1],
  [/^[0-9]+$/, 10, 0],
];

/** Reads a number with its suffix; undefined for what is none. */
export function readNumber(text: string): Literal | undefined {
  const unsigned = text.includes("'") ? text.replaceAll("'", '') : text;
  // The grammar takes a sign into the number where none can be subtracted from.
  const sign = /^[-+]/.test(unsigned) ? unsigned.slice(0, 1) : '';
  const literal = readUnsigned(unsigned.slice(sign.length).trim());
  return literal !== undefined && sign === '-' ? { ...literal, value: -literal.value } : literal;
}

function readUnsigned(plain: string): Literal | undefined {
  if (/^(?:0|[1-9][0-9]*)$/.test(plain)) return { value: Number(plain), type: 'int' };
  const suffix = /^0[xX]/.test(plain) ? /[uUlL]*$/.exec(plain) : /[uUlLfF]*$/.exec(plain);
  const tail = (suffix?.[0] ?? '').toLowerCase();
  const body = plain.slice(0, plain.length - tail.length);
  for (const [form, base, skip] of digits) {
    if (!form.test(body)) continue;
    const value = Number.parseInt(body.slice(skip), base);
    if (tail.includes('f')) return { value, type: 'float' };
    if (tail.includes('u')) return { value, type: tail.includes('l') ? 'unsigned long' : 'unsigned' };
    return { value, type: tail.includes('l') ? 'long' : 'int' };
  }
  if (!/^([0-9]+\.?[0-9]*|\.[0-9]+)([eE][-+]?[0-9]+)?$/.test(body)) return undefined;
  return { value: Number.parseFloat(body), type: 'float' };
}

const escapes: Readonly<Record<string, number>> = { n: 10, t: 9, r: 13, a: 7, b: 8, f: 12, v: 11 };

/** Reads `'a'` or `'\n'`; undefined where it is not one character. */
export function readCharacter(text: string): Literal | undefined {
  const inner = text.slice(text.indexOf("'") + 1, text.lastIndexOf("'"));
  if (inner.length === 1 && inner !== '\\') return { value: inner.charCodeAt(0), type: 'char' };
  if (!inner.startsWith('\\')) return undefined;
  const code = inner.slice(1);
  if (/^x[0-9a-fA-F]{1,2}$/.test(code)) return { value: Number.parseInt(code.slice(1), 16), type: 'char' };
  if (/^[0-7]{1,3}$/.test(code)) return { value: Number.parseInt(code, 8), type: 'char' };
  if (code.length !== 1) return undefined;
  return { value: escapes[code] ?? code.charCodeAt(0), type: 'char' };
}

/** `B0101`, as the core's header of binary names has them. */
export function readBinaryName(name: string): number | undefined {
  return /^B[01]{1,8}$/.test(name) ? Number.parseInt(name.slice(1), 2) : undefined;
}
