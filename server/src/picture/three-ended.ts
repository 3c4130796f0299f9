/** Parts of one symbol with three terminals: the potentiometer with its wiper, the transistor with base or gate. */
import type { PicturePart, PictureSymbol } from './model';
import { type Figure, type Lead, leadFor, type Stub, slotHeight, terminalText, wireTo } from './part-figure';
import { type Shape, upright } from './shapes';
import { drawSymbol, LENGTH } from './symbols';

/** True for a potentiometer alone, and for a transistor with nothing but its own junctions beside it. */
export function isThreeEnded({ symbols, terminals }: PicturePart): boolean {
  const main = mainOf(symbols);
  if (!main || terminals.length !== 3) return false;
  return symbols.every(
    (symbol) => symbol === main || (main.type === 'transistor' && symbol.type === 'diode'),
  );
}

function mainOf(symbols: readonly PictureSymbol[]): PictureSymbol | undefined {
  return symbols.find(({ type }) => type === 'potentiometer' || type === 'transistor');
}

/**
 * The two ends stand one above the other. The third leads to the side of its own wires; the ends lead to theirs, all
 * of them out of the way of the third.
 */
export function drawThreeEnded(part: PicturePart, leads: readonly Lead[], least: number): Figure {
  const main = mainOf(part.symbols);
  const leadOf = (terminal: string): Lead =>
    leads.find((lead) => lead.terminal === terminal) ?? { terminal, facing: 'in', wires: 0, rank: 0 };
  if (!main) return { width: least, height: 20, shapes: [], stubs: [] };
  const [a, b, third] = [leadOf(main.ends[0]), leadOf(main.ends[1]), leadOf(main.third ?? '')];
  const [upper, lower] = a.rank <= b.rank ? [a, b] : [b, a];
  const above = Math.max(14, slotHeight(upper.wires) / 2);
  const below = Math.max(14, slotHeight(lower.wires) / 2);
  const half = Math.max(LENGTH / 2 + 4, slotHeight(third.wires) / 2 + Math.max(above, below) - 4);
  const middle = above + half;
  const height = middle + half + below;
  const sideOf = (facing: 'in' | 'out') =>
    Math.max(
      14,
      ...[upper, lower, third]
        .filter((lead) => lead.facing === facing)
        .map(({ terminal }) => leadFor(terminal)),
    );
  const [left, right] = [sideOf('in') + 20, sideOf('out') + 20];
  const width = Math.max(least, left + right);
  const x = left + (width - left - right) / 2;
  const shapes: Shape[] = [];
  const stubs: Stub[] = [];
  const [first, last] = [above, height - below];
  for (const [lead, y] of [
    [upper, first],
    [lower, last],
  ] as const) {
    wireTo(
      shapes,
      [lead.facing === 'in' ? 0 : width, y],
      [x, y],
      [x, middle + (lead === upper ? -1 : 1) * (LENGTH / 2)],
    );
  }
  // The third end points to its wires.
  const toward = third.facing === 'in' ? -1 : 1;
  wireTo(shapes, [third.facing === 'in' ? 0 : width, middle], [x + toward * 15, middle]);
  if (main.type === 'potentiometer') {
    shapes.push(...drawSymbol(main, upright(x, middle - LENGTH / 2), upper === b));
    wireTo(shapes, [x + toward * 15, middle], [x + toward * 6, middle]);
    shapes.push(arrow(x + toward * 5.5, middle, -toward, 0));
  } else {
    shapes.push(...transistor(main, x, middle, toward, upper === a));
  }
  for (const [lead, y] of [
    [upper, first],
    [lower, last],
    [third, middle],
  ] as const) {
    const inward = lead.facing === 'in';
    shapes.push(terminalText(lead.terminal, inward ? 4 : width - 4, y, inward ? 'start' : 'end'));
    stubs.push({ terminal: lead.terminal, facing: lead.facing, y, wires: lead.wires });
  }
  return { width, height, shapes, stubs };
}

/** A filled head with its point at (x, y), looking along (dx, dy). */
function arrow(x: number, y: number, dx: number, dy: number): Shape {
  const length = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  return {
    kind: 'line',
    style: 'filled',
    points: [
      { x, y },
      { x: x - ux * 6.5 - uy * 3, y: y - uy * 6.5 + ux * 3 },
      { x: x - ux * 6.5 + uy * 3, y: y - uy * 6.5 - ux * 3 },
    ],
  };
}

/** Collector or drain at the top where `upright`, else at the bottom; the control comes from the side of `toward`. */
function transistor(
  main: PictureSymbol,
  x: number,
  middle: number,
  toward: number,
  firstAbove: boolean,
): Shape[] {
  const shapes: Shape[] = [{ kind: 'circle', centre: { x: x + toward * 3, y: middle }, radius: 15 }];
  const at = (dx: number) => x + toward * dx;
  // The second end (emitter, source) is the one that carries the arrow.
  const down = firstAbove ? 1 : -1;
  for (const sign of [-1, 1]) wireTo(shapes, [x, middle + sign * (LENGTH / 2)], [x, middle + sign * 9]);
  if (main.bipolar) {
    wireTo(shapes, [at(15), middle], [at(8), middle]);
    wireTo(shapes, [at(8), middle - 8], [at(8), middle + 8]);
    for (const sign of [-1, 1]) wireTo(shapes, [x, middle + sign * 9], [at(8), middle + sign * 3]);
    const outwards = main.channel === 'n';
    const [sx, sy] = [at(8), middle + down * 3];
    const [ex, ey] = [x, middle + down * 9];
    shapes.push(outwards ? arrow(ex, ey, ex - sx, ey - sy) : arrow(sx, sy, sx - ex, sy - ey));
    return shapes;
  }
  wireTo(shapes, [at(15), middle], [at(11), middle]);
  wireTo(shapes, [at(11), middle - 8], [at(11), middle + 8]);
  for (const [from, to] of [
    [-10, -5],
    [-2.5, 2.5],
    [5, 10],
  ] as const) {
    wireTo(shapes, [at(7), middle + from], [at(7), middle + to]);
  }
  for (const sign of [-1, 1])
    wireTo(shapes, [x, middle + sign * 9], [x, middle + sign * 7.5], [at(7), middle + sign * 7.5]);
  wireTo(shapes, [at(7), middle], [x, middle], [x, middle + down * 7.5]);
  shapes.push(main.channel === 'n' ? arrow(at(6.5), middle, toward, 0) : arrow(at(0.5), middle, -toward, 0));
  return shapes;
}
