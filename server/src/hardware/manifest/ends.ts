/**
 * What stands at one end of a wire: `part.terminal`, a part a path runs through, a board pin by any of its names, or
 * a pin at a header position. Exact names come first; upper and lower case are forgiven where nothing else fits.
 */
import type { Board, BoardPin, Part, Terminal } from '../../base/build';
import type { Problem } from '../../base/read';
import type { Span } from '../../base/span';
import { contentSpan, type JsonNode, textOf } from '../json/node';
import { listNames, quoteName, unknownName, withArticle } from '../names';
import { type Hole, holesOf, type PinPlace } from '../positions';

export interface TerminalEnd {
  readonly kind: 'terminal';
  readonly part: string;
  readonly terminal: string;
  readonly span: Span;
}

export interface PinEnd extends PinPlace {
  readonly kind: 'pin';
  readonly span: Span;
}

export type RawEnd = TerminalEnd | PinEnd;

/** An item of a path: where the wire before it arrives and where the one behind it starts. */
export interface Item {
  readonly enter: RawEnd;
  readonly leave: RawEnd;
}

export class EndReader {
  readonly #parts: ReadonlyMap<string, Part>;
  readonly #pins = new Map<string, BoardPin>();

  /**
   * @param board undefined where it could not be read; then whatever is no part may be a pin and is let pass.
   * @param declared Names of all parts, also of those that could not be read.
   */
  constructor(
    readonly board: Board | undefined,
    parts: readonly Part[],
    readonly declared: ReadonlySet<string>,
    readonly problems: Problem[],
  ) {
    this.#parts = new Map(parts.map((part) => [part.id, part]));
    for (const pin of board?.pins ?? []) {
      for (const name of pinNames(pin)) if (!this.#pins.has(name)) this.#pins.set(name, pin);
    }
    for (const pin of board?.pins ?? []) {
      for (const name of pinNames(pin)) {
        const folded = name.toLowerCase();
        if (!this.#pins.has(folded)) this.#pins.set(folded, pin);
      }
    }
  }

  /** Says where a part has the name of a pin: a wire to that name goes to the part, which may not be what was meant. */
  checkHiddenPins() {
    for (const part of this.#parts.values()) {
      const pin = this.#pins.get(part.id);
      if (pin === undefined || !pinNames(pin).includes(part.id)) continue;
      const message = `The part ${quoteName(part.id)} has the name of a pin of the board.`;
      const hint = 'Wires to that name go to the part. Rename the part.';
      this.problems.push({ code: 'part-hides-pin', message, span: part.span, hint });
    }
  }

  /** @returns undefined where the text is no end; the problem is told, but for what follows from another one. */
  read(node: JsonNode, inPath: boolean): Item | undefined {
    const text = textOf(node);
    if (text === undefined) return undefined;
    const span = contentSpan(node);
    const part = this.#parts.get(text);
    if (part !== undefined) return this.#wholePart(part, span, inPath);
    const pin = this.#findPin(text);
    if (pin !== undefined) return both({ kind: 'pin', pin: pin.id, span });
    if (text.includes('@')) return this.#pinAtPosition(text, span);
    const dot = text.lastIndexOf('.');
    const owner = dot < 0 ? text : text.slice(0, dot);
    if (dot >= 0) {
      const named = this.#parts.get(owner) ?? this.#partByFoldedName(owner);
      if (named !== undefined) return this.#terminal(named, text.slice(dot + 1), span);
    }
    const folded = dot < 0 ? this.#partByFoldedName(text) : undefined;
    if (folded !== undefined) return this.#wholePart(folded, span, inPath);
    if (this.board !== undefined && !this.declared.has(owner)) this.#unknown(text, dot, span);
    return undefined;
  }

  #unknown(text: string, dot: number, span: Span) {
    const parts = [...this.declared];
    if (dot >= 0) {
      const ownerSpan = { ...span, end: span.start + dot };
      const owner = text.slice(0, dot);
      this.problems.push(
        unknownName('unknown-part', `There is no part ${quoteName(owner)}.`, ownerSpan, owner, parts),
      );
      return;
    }
    const pins = (this.board?.pins ?? []).map((pin) => pin.id);
    const message = `There is no part and no pin ${quoteName(text)}.`;
    this.problems.push(unknownName('unknown-end', message, span, text, [...parts, ...pins]));
  }

  #findPin(text: string): BoardPin | undefined {
    return this.#pins.get(text) ?? this.#pins.get(text.toLowerCase());
  }

  #partByFoldedName(name: string): Part | undefined {
    const folded = name.toLowerCase();
    const alike = [...this.#parts.values()].filter((part) => part.id.toLowerCase() === folded);
    return alike.length === 1 ? alike[0] : undefined;
  }

  #wholePart(part: Part, span: Span, inPath: boolean): Item | undefined {
    const end = (terminal: string): RawEnd => ({ kind: 'terminal', part: part.id, terminal, span });
    if (inPath && part.series !== undefined) {
      return { enter: end(part.series[0]), leave: end(part.series[1]) };
    }
    const only = part.terminals.length === 1 ? part.terminals[0] : undefined;
    if (only !== undefined) return both(end(only.id));
    const names = part.terminals.map((terminal) => `${part.id}.${terminal.id}`);
    const hint = `Name one of its terminals: ${listNames(names)}.`;
    const message = inPath
      ? `A path cannot run through ${quoteName(part.id)}: a ${part.title} has ${names.length} terminals.`
      : `This wire does not say which terminal of ${quoteName(part.id)} it goes to.`;
    const code = inPath ? 'no-way-through' : 'no-terminal';
    this.problems.push({ code, message, span, hint });
    return undefined;
  }

  #terminal(part: Part, name: string, span: Span): Item | undefined {
    const found =
      part.terminals.find((one) => one.id === name) ??
      part.terminals.find((one) => one.names.includes(name)) ??
      part.terminals.find((one) =>
        terminalNames(one).some((other) => other.toLowerCase() === name.toLowerCase()),
      );
    if (found !== undefined) return both({ kind: 'terminal', part: part.id, terminal: found.id, span });
    const message = `${quoteName(part.id)} is ${withArticle(part.title)}, which has no terminal ${quoteName(name)}.`;
    const ids = part.terminals.map((one) => one.id);
    const nameSpan = { ...span, start: Math.max(span.start, span.end - name.length) };
    this.problems.push(unknownName('unknown-terminal', message, nameSpan, name, ids));
    return undefined;
  }

  #pinAtPosition(text: string, span: Span): Item | undefined {
    const { board } = this;
    if (board === undefined) return undefined;
    const at = text.indexOf('@');
    const pinName = text.slice(0, at);
    const pin = this.#findPin(pinName);
    if (pin === undefined) {
      const pinSpan = { ...span, end: span.start + at };
      const message = `The board has no pin ${quoteName(pinName)}.`;
      const ids = board.pins.map((one) => one.id);
      this.problems.push(unknownName('unknown-pin', message, pinSpan, pinName, ids));
      return undefined;
    }
    const place = text.slice(at + 1);
    const hole = findHole(board, place);
    const holes = holesOf(board, pin.id);
    if (hole !== undefined && holes.some((one) => one.header === hole.header && one.index === hole.index)) {
      return both({ kind: 'pin', pin: pin.id, declared: hole, span });
    }
    const there = hole && board.headers.find((one) => one.id === hole.header)?.positions[hole.index - 1];
    const message =
      there === undefined
        ? `The board has no header position ${quoteName(place)}.`
        : `At ${place} the board has ${there}, not ${pin.id}.`;
    const placeSpan = { ...span, start: span.start + at + 1 };
    const right = holes.map((one) => `${one.header}.${one.index}`);
    this.problems.push(unknownName('unknown-position', message, placeSpan, place, right));
    return undefined;
  }
}

function both(end: RawEnd): Item {
  return { enter: end, leave: end };
}

/** All names a pin goes by: printed, typed, and its number. */
export function pinNames(pin: BoardPin): string[] {
  return [pin.id, ...pin.names, ...(pin.number === undefined ? [] : [String(pin.number)])];
}

function terminalNames(terminal: Terminal): string[] {
  return [terminal.id, ...terminal.names];
}

function findHole(board: Board, place: string): Hole | undefined {
  const match = /^(.+)\.(\d{1,3})$/.exec(place);
  const [, name = '', number = ''] = match ?? [];
  const folded = name.toLowerCase();
  const header =
    board.headers.find((one) => one.id === name) ??
    board.headers.find((one) => one.id.toLowerCase() === folded);
  const index = Number(number);
  if (header === undefined || index < 1 || index > header.positions.length) return undefined;
  return { header: header.id, index };
}
