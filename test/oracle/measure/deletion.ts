/**
 * A sketch with one token gone, as it looks while somebody types: the uses outside the broken statement have to
 * survive. The statement is found in the whole text, by the brackets and semicolons around the token; where the token
 * stands in the head of something that has a body, all of that is excused.
 */
import type { PinUse } from '../../../server/src/base/pin-use';
import type { SketchFile } from '../firmware/compile-firmware';
import { seeded } from './random';

export interface Deletion {
  readonly files: readonly SketchFile[];
  readonly file: string;
  readonly token: string;
  /** Half-open range in the whole text that was taken out. */
  readonly start: number;
  readonly end: number;
  /** Half-open range in the whole text that is excused. */
  readonly broken: { readonly start: number; readonly end: number };
}

const TOKEN =
  /\/\/[^\n]*|\/\*[\s\S]*?\*\/|^[ \t]*#(?:\\\r?\n|[^\n])*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|[A-Za-z_]\w*|\d[\w.]*|::|->|<<=?|>>=?|[-+*/%&|^!<>=]=|&&|\|\||\+\+|--|[^\s\w]/gm;

interface Token {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** Takes a token out of one of the files. Undefined where there is none. */
export function deleteToken(files: readonly SketchFile[], seed: string): Deletion | undefined {
  const random = seeded(seed);
  const candidates = files.filter(({ text }) => tokensOf(text).length > 0);
  if (candidates.length === 0) {
    return undefined;
  }
  const file = random.pick(candidates);
  const tokens = tokensOf(file.text);
  const index = random.below(tokens.length);
  const token = tokens[index];
  if (token === undefined) {
    return undefined;
  }
  const text = `${file.text.slice(0, token.start)} ${file.text.slice(token.end)}`;
  return {
    files: files.map((one) => (one === file ? { name: file.name, text } : one)),
    file: file.name,
    token: token.text,
    start: token.start,
    end: token.end,
    broken: brokenPart(tokens, index, file.text.length),
  };
}

/** Comments and directives are no tokens here: a deleted directive changes the meaning of the whole text. */
function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  for (const { 0: found, index } of text.matchAll(TOKEN)) {
    if (!/^(\/\/|\/\*|\s*#)/.test(found)) {
      tokens.push({ text: found, start: index, end: index + found.length });
    }
  }
  return tokens;
}

const OPENING = '([{';
const CLOSING = ')]}';

/** From behind the statement before to the end of the one the token stands in, with the body it may have. */
function brokenPart(tokens: readonly Token[], index: number, length: number): Deletion['broken'] {
  const textAt = (at: number) => tokens[at]?.text ?? '';
  // Round brackets around the token: the semicolons of a loop's head end no statement.
  let around = 0;
  let outermost = index;
  for (let at = index - 1, closed = 0; at >= 0 && !'{}'.includes(textAt(at)); at -= 1) {
    if (textAt(at) === ')') {
      closed += 1;
    } else if (textAt(at) === '(') {
      if (closed === 0) {
        around += 1;
        outermost = at;
      }
      closed = Math.max(0, closed - 1);
    }
  }
  let first = outermost;
  while (first > 0 && !'{};'.includes(textAt(first - 1))) {
    first -= 1;
  }
  let last = tokens.length - 1;
  for (let at = index, depth = around; at < tokens.length; at += 1) {
    const text = textAt(at);
    if (OPENING.includes(text)) {
      depth += 1;
    } else if (CLOSING.includes(text)) {
      depth = Math.max(0, depth - 1);
    }
    // A semicolon that is itself gone joins its statement to the next one.
    if (depth === 0 && (text === '}' || (text === ';' && at !== index))) {
      last = at;
      break;
    }
  }
  return { start: tokens[first]?.start ?? 0, end: tokens[last]?.end ?? length };
}

export interface Survival {
  /** Uses outside the broken part. */
  readonly outside: number;
  /** Those of them that are there still, at their place. */
  readonly kept: number;
  /** Those of them that have all their pins still. */
  readonly same: number;
}

/**
 * How many uses of the whole text outlive the deletion.
 * @param before Uses of the whole text. @param after Uses of the text with the token gone.
 */
export function survivors(before: readonly PinUse[], after: readonly PinUse[], deletion: Deletion): Survival {
  // The token left one blank behind.
  const gap = deletion.end - deletion.start - 1;
  const isHere = ({ callSpan }: PinUse) => callSpan.file.endsWith(`/${deletion.file}`);
  const keyAt = (use: PinUse, start: number) => `${use.callSpan.file} ${start} ${use.call} ${use.action}`;
  const found = new Map<string, Set<number>>();
  for (const use of after) {
    const key = keyAt(use, use.callSpan.start);
    const pins = found.get(key) ?? new Set();
    for (const pin of use.pins.kind === 'known' ? use.pins.values : []) {
      pins.add(pin);
    }
    found.set(key, pins);
  }
  const counts = { outside: 0, kept: 0, same: 0 };
  for (const use of before) {
    const { start, end } = use.callSpan;
    if (isHere(use) && start < deletion.broken.end && end > deletion.broken.start) {
      continue;
    }
    const pins = found.get(keyAt(use, isHere(use) && start >= deletion.end ? start - gap : start));
    const wanted = use.pins.kind === 'known' ? use.pins.values : [];
    counts.outside += 1;
    counts.kept += pins === undefined ? 0 : 1;
    counts.same += pins !== undefined && wanted.every((pin) => pins.has(pin)) ? 1 : 0;
  }
  return counts;
}
