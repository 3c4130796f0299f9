/**
 * A line of somebody's file with a marker under it, as wide as the terminal shows it. Control characters never reach
 * the terminal: a file could otherwise move the cursor or turn the reading direction round.
 */
import type { LineIndex } from './lines';

/** Columns from one tab stop to the next. */
const TAB = 4;
/** UTF-16 units of a line that are looked at on each side of the marker; a line may be megabytes long. */
const REACH = 600;

/** Two lines of the same layout. */
export interface Excerpt {
  readonly source: string;
  readonly marker: string;
}

interface Cell {
  readonly shown: string;
  readonly width: number;
  readonly marked: boolean;
}

// What a terminal obeys instead of showing: C0 and C1 controls, line separators, direction overrides.
const CONTROL = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u;
const CONTROLS = new RegExp(CONTROL, 'gu');
// Shown on top of the character before, or not at all: marks (variation selectors are among them) and joiners.
const NO_WIDTH = /^(?:\p{M}|[\u200b-\u200d]|\u2060|\ufeff)$/u;
// Unicode Standard Annex 11, classes W and F, in the blocks that matter (ranges from memory).
const WIDE =
  /^[\p{Emoji_Presentation}\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]$/u;

/** Columns that one code point takes in a terminal: 0, 1 or 2. */
function columnsOf(point: string): number {
  if (point >= ' ' && point <= '~') {
    return 1;
  }
  return NO_WIDTH.test(point) ? 0 : WIDE.test(point) ? 2 : 1;
}

/** A text for one line of a terminal: every control character becomes U+FFFD. */
export function harmless(text: string): string {
  return text.replace(CONTROLS, '\ufffd');
}

/**
 * Draws the first line of a span.
 * @param start Offset of the span in the text of `lines`.
 * @param end Offset behind the span. Equal to `start`: the marker is one column wide.
 * @param columns Columns there are; a longer line is cut to the surroundings of the marker.
 */
export function drawExcerpt(lines: LineIndex, start: number, end: number, columns: number): Excerpt {
  const bounds = lines.boundsOf(lines.placeOf(start).line);
  const from = Math.max(bounds.start, Math.min(start, bounds.end));
  const to = Math.max(from, Math.min(end, bounds.end));
  const first = wholePoint(lines.text, Math.max(bounds.start, from - REACH));
  const last = wholePoint(lines.text, Math.min(bounds.end, from + REACH));
  const cells = layOut(lines.text.slice(first, last), from - first, Math.max(to, from + 1) - first);
  if (from === bounds.end) {
    // The span begins behind the last character: the marker stands in the empty column there.
    cells.push({ shown: ' ', width: 1, marked: true });
  }
  return cut(cells, columns, first > bounds.start, last < bounds.end);
}

/** The offset, or the one before it where it would split a surrogate pair. */
function wholePoint(text: string, offset: number): number {
  const unit = text.charCodeAt(offset);
  return offset > 0 && unit >= 0xdc00 && unit <= 0xdfff ? offset - 1 : offset;
}

function layOut(line: string, from: number, to: number): Cell[] {
  const cells: Cell[] = [];
  let unit = 0;
  let column = 0;
  for (const point of line) {
    const marked = unit < to && unit + point.length > from;
    const width = point === '\t' ? TAB - (column % TAB) : CONTROL.test(point) ? 1 : columnsOf(point);
    const shown = point === '\t' ? ' '.repeat(width) : CONTROL.test(point) ? '\ufffd' : point;
    cells.push({ shown, width, marked });
    unit += point.length;
    column += width;
  }
  return cells;
}

function cut(cells: readonly Cell[], columns: number, moreBefore: boolean, moreBehind: boolean): Excerpt {
  const marked = cells.findIndex((cell) => cell.marked);
  const widthOf = (some: readonly Cell[]) => some.reduce((sum, cell) => sum + cell.width, 0);
  let first = 0;
  if (widthOf(cells) + (moreBefore ? 1 : 0) + (moreBehind ? 1 : 0) > columns) {
    // A third of the room goes to what stands before the marker, the rest to the marker and what follows.
    let room = Math.floor(columns / 3);
    first = Math.max(0, marked);
    while (first > 0 && room >= (cells[first - 1]?.width ?? 0)) {
      first -= 1;
      room -= cells[first]?.width ?? 0;
    }
  }
  const before = moreBefore || first > 0 ? '…' : '';
  let room = columns - before.length - 1;
  let last = first;
  while (last < cells.length && room >= (cells[last]?.width ?? 0)) {
    room -= cells[last]?.width ?? 0;
    last += 1;
  }
  const shown = cells.slice(first, last);
  const behind = moreBehind || last < cells.length ? '…' : '';
  return {
    source: `${before}${shown.map((cell) => cell.shown).join('')}${behind}`.trimEnd(),
    marker: (
      ' '.repeat(before.length) + shown.map((cell) => (cell.marked ? '^' : ' ').repeat(cell.width)).join('')
    ).trimEnd(),
  };
}
