/**
 * The symbols of IEC 60617 (from memory), each along the x axis from (0, 0) to (LENGTH, 0) with its first end at 0.
 */
import type { PictureSymbol } from './model';
import { type LineStyle, type Point, place, type Shape, type Turn } from './shapes';

/** Pixels from end to end. */
export const LENGTH = 48;
/** Room to either side of the axis. */
export const REACH = 18;

type Pair = readonly [number, number];

interface Pen {
  line(points: readonly Pair[], style?: LineStyle): void;
  arc(from: Pair, to: Pair, radius: number): void;
  circle(centre: Pair, radius: number, filled?: boolean): void;
  sign(text: string, at: Pair, size?: number): void;
}

function penOf(turn: Turn, shapes: Shape[]): Pen {
  const at = ([x, y]: Pair): Point => place(turn, x, y);
  return {
    line: (points, style) => shapes.push({ kind: 'line', points: points.map(at), ...(style && { style }) }),
    arc: (from, to, radius) => shapes.push({ kind: 'arc', from: at(from), to: at(to), radius, sweep: true }),
    circle: (centre, radius, filled) =>
      shapes.push({ kind: 'circle', centre: at(centre), radius, ...(filled && { filled }) }),
    sign(text, centre, size = 11) {
      const { x, y } = at(centre);
      shapes.push({
        kind: 'text',
        at: { x, y: y + size * 0.36 },
        text,
        size,
        anchor: 'middle',
        role: 'sign',
      });
    },
  };
}

/** The strokes of a symbol; `turned` where its second end lies at 0. */
export function drawSymbol(symbol: PictureSymbol, turn: Turn, turned = false): readonly Shape[] {
  const shapes: Shape[] = [];
  const start = place(turn, LENGTH, 0);
  const around: Turn = turned
    ? { origin: start, along: { x: -turn.along.x, y: -turn.along.y }, across: turn.across }
    : turn;
  DRAWERS[symbol.type](penOf(around, shapes), symbol);
  return shapes;
}

function leads(pen: Pen, from: number, to: number): void {
  pen.line([
    [0, 0],
    [from, 0],
  ]);
  pen.line([
    [to, 0],
    [LENGTH, 0],
  ]);
}

function rectangle(pen: Pen, from: number, to: number, half: number): void {
  pen.line(
    [
      [from, -half],
      [to, -half],
      [to, half],
      [from, half],
    ],
    'closed',
  );
}

/** A ray of light that leaves the junction. */
function ray(pen: Pen, x: number, y: number): void {
  pen.line([
    [x, y],
    [x + 6, y - 6],
  ]);
  pen.line(
    [
      [x + 7, y - 7],
      [x + 2.6, y - 5.6],
      [x + 5.6, y - 2.6],
    ],
    'filled',
  );
}

function junction(pen: Pen): void {
  pen.line([
    [0, 0],
    [LENGTH, 0],
  ]);
  pen.line(
    [
      [17, -8],
      [31, 0],
      [17, 8],
    ],
    'closed',
  );
  pen.line([
    [31, -8],
    [31, 8],
  ]);
}

function block(pen: Pen): void {
  leads(pen, 8, 40);
  rectangle(pen, 8, 40, 10);
}

const DRAWERS: Readonly<Record<PictureSymbol['type'], (pen: Pen, symbol: PictureSymbol) => void>> = {
  resistor(pen) {
    leads(pen, 10, 38);
    rectangle(pen, 10, 38, 5.5);
  },
  fuse(pen) {
    leads(pen, 10, 38);
    rectangle(pen, 10, 38, 5.5);
    pen.line([
      [10, 0],
      [38, 0],
    ]);
  },
  capacitor(pen, { polarised }) {
    leads(pen, 21, 27);
    for (const x of [21, 27])
      pen.line([
        [x, -10],
        [x, 10],
      ]);
    if (polarised) pen.sign('+', [14, -7]);
  },
  coil(pen) {
    leads(pen, 8, 40);
    for (const x of [8, 16, 24, 32]) pen.arc([x, 0], [x + 8, 0], 4);
  },
  diode: (pen) => junction(pen),
  zener(pen) {
    junction(pen);
    pen.line([
      [31, 8],
      [26, 8],
    ]);
  },
  light(pen) {
    junction(pen);
    ray(pen, 22, -9);
    ray(pen, 30, -9);
  },
  lamp(pen) {
    leads(pen, 13, 35);
    pen.circle([24, 0], 11);
    for (const sign of [1, -1])
      pen.line([
        [16.2, -7.8 * sign],
        [31.8, 7.8 * sign],
      ]);
  },
  switch(pen, { closed, momentary, operatedBy }) {
    leads(pen, 12, 36);
    const tip: Pair = closed ? [37, 3] : [35, -11];
    pen.line([[12, 0], tip]);
    if (closed)
      pen.line([
        [36, 0],
        [36, 6],
      ]);
    const middle = closed ? 1.5 : -5.5;
    if (operatedBy !== undefined) return;
    pen.line(
      [
        [23, middle],
        [23, -16],
      ],
      'dashed',
    );
    // The head of a push-button returns by itself; a lever's stays where it was put.
    const down = momentary ? -13 : -19;
    pen.line([
      [18, down],
      [18, -16],
      [28, -16],
      [28, momentary ? -13 : -13],
    ]);
  },
  potentiometer(pen) {
    leads(pen, 10, 38);
    rectangle(pen, 10, 38, 5.5);
  },
  cells(pen) {
    leads(pen, 18, 30);
    for (const x of [18, 26])
      pen.line([
        [x, -10],
        [x, 10],
      ]);
    for (const x of [22, 30])
      pen.line([
        [x, -5],
        [x, 5],
      ]);
    pen.sign('+', [12, -7]);
  },
  source(pen) {
    leads(pen, 13, 35);
    pen.circle([24, 0], 11);
    pen.line([
      [13, 0],
      [35, 0],
    ]);
    pen.sign('+', [8, -7]);
  },
  load: (pen) => block(pen),
  logic: (pen) => block(pen),
  motor(pen) {
    leads(pen, 13, 35);
    pen.circle([24, 0], 11);
    pen.sign('M', [24, 0]);
  },
  sounder(pen) {
    leads(pen, 15, 33);
    pen.line([
      [13, 4],
      [35, 4],
    ]);
    pen.arc([13, 4], [35, 4], 11);
    pen.line([
      [15, 0],
      [15, 4],
    ]);
    pen.line([
      [33, 0],
      [33, 4],
    ]);
  },
  transistor: (pen) => block(pen),
};
