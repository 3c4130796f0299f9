/**
 * Strokes of a symbol as data, in pixels. Symbols are drawn once, along the x axis, and put in place by a turn: so the
 * same lamp stands upright, lies, or looks the other way, and no text is ever mirrored.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Shape =
  | { readonly kind: 'line'; readonly points: readonly Point[]; readonly style?: LineStyle }
  | {
      readonly kind: 'arc';
      readonly from: Point;
      readonly to: Point;
      readonly radius: number;
      readonly sweep: boolean;
    }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number; readonly filled?: boolean }
  | TextShape;

export type LineStyle = 'closed' | 'filled' | 'dashed' | 'plain' | 'faint';

export interface TextShape {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** CSS class of the text. */
  readonly role: 'name' | 'value' | 'terminal' | 'amps' | 'sign';
}

/** Where a symbol's own (0, 0) comes to lie, and which way its x and y run from there. */
export interface Turn {
  readonly origin: Point;
  readonly along: Point;
  readonly across: Point;
}

export const lying = (x: number, y: number): Turn => ({
  origin: { x, y },
  along: { x: 1, y: 0 },
  across: { x: 0, y: 1 },
});

/** Along the y axis, with what was above it to the right. */
export const upright = (x: number, y: number): Turn => ({
  origin: { x, y },
  along: { x: 0, y: 1 },
  across: { x: -1, y: 0 },
});

export function place({ origin, along, across }: Turn, x: number, y: number): Point {
  return { x: origin.x + along.x * x + across.x * y, y: origin.y + along.y * x + across.y * y };
}

/** Swaps left and right within a width; text keeps its reading direction. */
export function mirror(shape: Shape, width: number): Shape {
  const swap = ({ x, y }: Point): Point => ({ x: width - x, y });
  switch (shape.kind) {
    case 'line':
      return { ...shape, points: shape.points.map(swap) };
    case 'arc':
      return { ...shape, from: swap(shape.from), to: swap(shape.to), sweep: !shape.sweep };
    case 'circle':
      return { ...shape, centre: swap(shape.centre) };
    case 'text': {
      const anchors = { start: 'end', middle: 'middle', end: 'start' } as const;
      return { ...shape, at: swap(shape.at), anchor: anchors[shape.anchor] };
    }
  }
}

/** A character's advance in the picture's monospaced fonts, as a share of the size: the widest of the usual ones. */
const ADVANCE = 0.62;

/** Signs that take two cells: East Asian scripts, pictographs. */
const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|[\u{20000}-\u{3fffd}]/u;

function cellsOf(sign: string): number {
  if (/\p{Mark}|\u200d/u.test(sign)) return 0;
  return WIDE.test(sign) ? 2 : 1;
}

/** Width of a text in pixels. */
export function widthOf(text: string, size: number): number {
  let cells = 0;
  for (const sign of text) cells += cellsOf(sign);
  return cells * size * ADVANCE;
}

/** A text of no more than so many cells, its end replaced by an ellipsis where it is longer. */
export function shorten(text: string, cells: number): string {
  const clean = text.replace(/\s+/g, ' ').trim();
  let used = 0;
  let kept = '';
  for (const sign of clean) {
    used += cellsOf(sign);
    if (used > cells) return `${[...kept].slice(0, -1).join('')}…`;
    kept += sign;
  }
  return kept;
}

/** Room that a text takes, with the descenders. */
export function boxOf({ at, text, size, anchor }: TextShape): Box {
  const width = widthOf(text, size);
  const shift = { start: 0, middle: width / 2, end: width }[anchor];
  return { x: at.x - shift, y: at.y - size * 0.8, width, height: size };
}

export function overlaps(a: Box, b: Box, gap = 0): boolean {
  return (
    a.x < b.x + b.width + gap &&
    b.x < a.x + a.width + gap &&
    a.y < b.y + b.height + gap &&
    b.y < a.y + a.height + gap
  );
}
