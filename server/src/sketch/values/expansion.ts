/**
 * Macros that are more than an expression or statements by themselves: pasted and quoted names, lists that a macro is
 * handed to, bodies that declare something. They are replaced as the preprocessor replaces them, token by token, and
 * what comes out is read.
 */
import { type Token, tokens } from '../form/tokens';
import { bodyOf, type Macro, type MacroBody, readBody } from './macros';
import type { Site } from './model';

/** Where macros are looked up. */
export interface MacroSource {
  find(name: string, site: Site, offset: number): readonly (Macro | undefined)[];
}

interface Piece {
  readonly text: string;
  readonly kind: Token['kind'];
  /** Macros that it came out of: they are not replaced in it again. */
  readonly from: readonly string[];
}

const mostPieces = 6000;
const mostReplaced = 3000;

const needing = new WeakMap<Macro, boolean>();

/** Whether a macro can only be read by replacing its text. */
export function needsText(source: MacroSource, macro: Macro, site: Site, offset: number, depth = 0): boolean {
  const ready = needing.get(macro);
  if (ready !== undefined) return ready;
  if (macro.definition.span === undefined) return false;
  // What calls itself is settled by its other parts.
  needing.set(macro, false);
  const list = tokens(macro.body, 600);
  let needs = macro.body.includes('#') || isLoose(macro, list);
  for (const { kind, text } of list) {
    if (needs || depth > 12) break;
    if (kind !== 'name' || macro.parameters?.includes(text) === true || text === macro.name) continue;
    const inner = source.find(text, site, offset)[0];
    if (inner !== undefined) needs = needsText(source, inner, site, offset, depth + 1);
  }
  needing.set(macro, needs);
  return needs;
}

/** A body that is nothing whole, or has a parameter where a name is declared, a type, or a member. */
function isLoose(macro: Macro, list: readonly Token[]): boolean {
  if (list.length === 0) return false;
  const { expression, items } = bodyOf(macro);
  if (expression === undefined && items === undefined) return true;
  const { parameters } = macro;
  if (parameters === undefined) return false;
  return list.some(({ kind, text }, at) => {
    if (kind !== 'name' || !parameters.includes(text)) return false;
    const before = list[at - 1];
    const after = list[at + 1];
    const isDeclared = before?.kind === 'name' && !/^(return|else|do|case)$/.test(before.text);
    return (
      isDeclared || after?.kind === 'name' || after?.text === '::' || /^(\.|->|::)$/.test(before?.text ?? '')
    );
  });
}

/** A text with its macros replaced. Undefined where that takes too much. */
export function expandText(
  source: MacroSource,
  text: string,
  site: Site,
  offset: number,
): string | undefined {
  const list = tokens(text, mostPieces).map(({ text: one, kind }) => ({ text: one, kind, from: [] }));
  const state = { left: mostReplaced };
  const done = replaced(source, list, site, offset, state, true);
  return done?.map((piece) => piece.text).join(' ');
}

/** What a macro's use stands for: an expression, or statements and declarations. */
export function expandedBody(source: MacroSource, text: string, site: Site, offset: number): MacroBody {
  const whole = expandText(source, text, site, offset);
  return whole === undefined ? {} : readBody(whole);
}

interface Left {
  left: number;
}

/** @param keeps leaves names that stand for a plain value as they are: they are where the value came from. */
function replaced(
  source: MacroSource,
  given: readonly Piece[],
  site: Site,
  offset: number,
  state: Left,
  keeps: boolean,
): readonly Piece[] | undefined {
  const done: Piece[] = [];
  // The rest of the text, the next piece last.
  const rest = [...given].reverse();
  for (let piece = rest.pop(); piece !== undefined; piece = rest.pop()) {
    const macro = piece.kind === 'name' ? source.find(piece.text, site, offset)[0] : undefined;
    if (macro === undefined || piece.from.includes(macro.name)) {
      done.push(piece);
      continue;
    }
    const isPlain = macro.parameters === undefined && !needsText(source, macro, site, offset);
    if (isPlain && (keeps || macro.definition.span === undefined)) {
      done.push(piece);
      continue;
    }
    const list = macro.parameters === undefined ? [] : takeArguments(rest);
    if (list === undefined) {
      done.push(piece);
      continue;
    }
    state.left -= 1;
    if (state.left < 0 || rest.length > mostPieces || done.length > mostPieces) return undefined;
    const from = [...piece.from, macro.name];
    const body = substituted(source, macro, list, site, offset, state);
    if (body === undefined) return undefined;
    for (let at = body.length - 1; at >= 0; at -= 1) {
      const one = body[at];
      if (one !== undefined) rest.push({ ...one, from: [...new Set([...one.from, ...from])] });
    }
  }
  return done;
}

/** Takes `( … , … )` off the rest; undefined where none follows. */
function takeArguments(rest: Piece[]): readonly (readonly Piece[])[] | undefined {
  if (rest[rest.length - 1]?.text !== '(') return undefined;
  const list: Piece[][] = [[]];
  let depth = 0;
  for (let at = rest.length - 1; at >= 0; at -= 1) {
    const piece = rest[at];
    if (piece === undefined) return undefined;
    if (/^[([{]$/.test(piece.text)) depth += 1;
    if (/^[)\]}]$/.test(piece.text)) depth -= 1;
    if (depth === 0) {
      rest.length = at;
      return list;
    }
    if (depth === 1 && piece.text === ',') list.push([]);
    else if (at < rest.length - 1) list[list.length - 1]?.push(piece);
  }
  return undefined;
}

/** The body with its parameters put in, names pasted and quoted. */
function substituted(
  source: MacroSource,
  macro: Macro,
  list: readonly (readonly Piece[])[],
  site: Site,
  offset: number,
  state: Left,
): readonly Piece[] | undefined {
  const parameters = macro.parameters ?? [];
  const body = tokens(macro.body, mostPieces).map(({ text, kind }) => ({ text, kind, from: [] }));
  const given = (name: string): readonly Piece[] | undefined => {
    if (name === '__VA_ARGS__') {
      const at = parameters.indexOf('...');
      return at === -1 ? undefined : joined(list.slice(at));
    }
    const at = parameters.indexOf(name);
    return at === -1 ? undefined : (list[at] ?? []);
  };
  const whole = new Map<string, readonly Piece[] | undefined>();
  const expandedArgument = (name: string, raw: readonly Piece[]): readonly Piece[] => {
    if (!whole.has(name))
      whole.set(name, replaced(source, raw, site, offset, state, !macro.body.includes('(')));
    return whole.get(name) ?? raw;
  };
  const done: Piece[] = [];
  for (let at = 0; at < body.length; at += 1) {
    const piece = body[at];
    if (piece === undefined) continue;
    const next = body[at + 1];
    const raw = piece.kind === 'name' ? given(piece.text) : undefined;
    const quoted = piece.text === '#' && next !== undefined ? given(next.text) : undefined;
    if (quoted !== undefined) {
      done.push({ text: JSON.stringify(quoted.map(({ text }) => text).join(' ')), kind: 'string', from: [] });
      at += 1;
    } else if (piece.text === '##') {
      const right = next === undefined ? [] : (given(next.text) ?? [next]);
      paste(done, right);
      at += 1;
    } else if (raw !== undefined)
      done.push(...(next?.text === '##' ? raw : expandedArgument(piece.text, raw)));
    else done.push(piece);
    if (done.length > mostPieces) return undefined;
  }
  return done;
}

function joined(list: readonly (readonly Piece[])[]): readonly Piece[] {
  const comma: Piece = { text: ',', kind: 'sign', from: [] };
  return list.flatMap((one, index) => (index === 0 ? one : [comma, ...one]));
}

/** Makes one token of the last piece and the first of the right side. */
function paste(done: Piece[], right: readonly Piece[]): void {
  const [first, ...others] = right;
  if (first === undefined) return;
  const last = done.pop();
  // A comma in front of no further arguments stays as it is.
  if (last === undefined || last.text === ',') done.push(...(last === undefined ? [] : [last]), first);
  else {
    const [made] = tokens(last.text + first.text, 2);
    done.push({ text: last.text + first.text, kind: made?.kind ?? 'name', from: [] });
  }
  done.push(...others);
}
