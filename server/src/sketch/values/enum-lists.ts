/**
 * Enumerations whose entries come out of macros: `enum { LAMPS(AS_ENTRY) COUNT };`. The grammar stops at the first
 * bracket, so their text is replaced as the preprocessor replaces it and the entries are read from what comes out.
 */
import type { EnumItem, Place } from '../form/ast';
import { parseExpression } from '../form/text-parser';
import { type Token, tokens } from '../form/tokens';
import { expandText } from './expansion';
import type { Program, Site } from './model';

const longestEnum = 40_000;

type Source = Pick<Program, 'macros' | 'textAt'>;

const read = new WeakMap<object, EnumItem>();

/** The enumeration with all its entries. */
export function wholeEnum(program: Source, item: EnumItem, site: Site): EnumItem {
  const ready = read.get(item);
  if (ready !== undefined) return ready;
  const own = program.textAt(site, item);
  if (own === undefined) return item;
  const behind = program.textAt(site, { start: item.end, end: item.end + 200 }) ?? '';
  // A whole one without a bracket has nothing to replace.
  if (!own.includes('(') && !/^\s*\(/.test(behind)) return item;
  const entries = entriesIn(program, item, site);
  const whole = entries === undefined ? item : { ...item, entries };
  read.set(item, whole);
  return whole;
}

/**
 * What reads as an expression and is an enumeration: `enum : uint8_t { LAMPS(AS_ENTRY) };`. Of one without a name only
 * the first word in the braces may be left.
 */
export function enumMeant(program: Source, written: Place, site: Site): EnumItem | undefined {
  const before = program.textAt(site, { start: 0, end: written.start }) ?? '';
  const place = /^enum\b[^{};]*\{\s*$/.test(before) ? { start: 0, end: written.end } : written;
  const text = program.textAt(site, { start: place.start, end: place.end + 200 }) ?? '';
  const head = /^enum\b\s*(class\b|struct\b)?\s*(\w*)\s*(?::[\w\s:]+)?\{/.exec(text);
  if (head === null) return undefined;
  const bare = { kind: 'enum' as const, name: head[2] ?? '', scoped: head[1] !== undefined, entries: [] };
  const item = { ...bare, start: place.start, end: place.end };
  const entries = entriesIn(program, item, site);
  return entries === undefined ? undefined : { ...item, entries };
}

function entriesIn(program: Source, item: Place, site: Site): EnumItem['entries'] | undefined {
  const text = program.textAt(site, { start: item.start, end: item.start + longestEnum }) ?? '';
  const open = text.indexOf('{');
  const close = open === -1 ? -1 : closing(text, open);
  if (close === -1) return undefined;
  const body = text.slice(open + 1, close);
  const whole = expandText(program.macros, body, site, item.start);
  if (whole === undefined) return undefined;
  const written = tokens(body);
  const macro = written.find(({ kind }, at) => kind === 'name' && written[at + 1]?.text === '(');
  const from = item.start + open + 1;
  const placeOf = ({ start, text: { length } }: Token): Place => {
    return { start: from + start, end: from + start + length };
  };
  return split(tokens(whole)).flatMap((list) => {
    const [name, sign] = list;
    if (name?.kind !== 'name') return [];
    // An entry that a macro makes stands where the macro does.
    const token = written.find((one) => one.kind === 'name' && one.text === name.text) ?? macro;
    const place = token === undefined ? { start: item.start, end: item.end } : placeOf(token);
    const value =
      sign?.text === '='
        ? parseExpression(
            list
              .slice(2)
              .map((one) => one.text)
              .join(' '),
          )
        : undefined;
    return [{ name: name.text, place, ...(value === undefined ? {} : { value }) }];
  });
}

/** Offset of the bracket that closes the one at `open`. */
function closing(text: string, open: number): number {
  let depth = 0;
  for (const { text: sign, start } of tokens(text.slice(open))) {
    if (sign === '{') depth += 1;
    if (sign === '}') depth -= 1;
    if (depth === 0) return open + start;
  }
  return -1;
}

/** Parts between commas that stand in no brackets. */
export function split(list: readonly Token[]): readonly (readonly Token[])[] {
  const parts: Token[][] = [[]];
  let depth = 0;
  for (const token of list) {
    if (/^[([{]$/.test(token.text)) depth += 1;
    if (/^[)\]}]$/.test(token.text)) depth -= 1;
    if (depth === 0 && token.text === ',') parts.push([]);
    else parts[parts.length - 1]?.push(token);
  }
  return parts.filter((part) => part.length > 0);
}
