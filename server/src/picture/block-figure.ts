/** Parts that are more than a symbol or two: a block with its terminals by name, and the joint, which is only metal. */
import type { PicturePart } from './model';
import {
  type Figure,
  frame,
  type Lead,
  leadFor,
  type Stub,
  slotHeight,
  TERMINAL_SIZE,
  terminalText,
  wireTo,
} from './part-figure';
import { type Shape, widthOf } from './shapes';

interface Column {
  readonly leads: readonly Lead[];
  readonly width: number;
  readonly height: number;
}

/** Wired terminals on the side of their wires, the others where there is room, below. */
function columnsOf(
  leads: readonly Lead[],
  widthFor: (terminal: string) => number,
): readonly [Column, Column] {
  const sides: { in: Lead[]; out: Lead[] } = { in: [], out: [] };
  for (const lead of leads) if (lead.wires > 0) sides[lead.facing].push(lead);
  sides.in.sort((a, b) => a.rank - b.rank);
  sides.out.sort((a, b) => a.rank - b.rank);
  for (const lead of leads) {
    if (lead.wires === 0) (sides.in.length < sides.out.length ? sides.in : sides.out).push(lead);
  }
  const columnOf = (own: readonly Lead[]): Column => ({
    leads: own,
    width: Math.max(0, ...own.map(({ terminal }) => widthFor(terminal))),
    height: own.reduce((sum, { wires }) => sum + slotHeight(wires), 0),
  });
  return [columnOf(sides.in), columnOf(sides.out)];
}

const STUB = 8;

export function drawBlock(leads: readonly Lead[], least: number): Figure {
  const [left, right] = columnsOf(leads, (terminal) => widthOf(terminal, TERMINAL_SIZE));
  const width = Math.max(least, 2 * STUB + left.width + right.width + 28, 64);
  const height = Math.max(left.height, right.height, 26);
  const shapes: Shape[] = [frame(STUB, 0, width - STUB, height, 'closed')];
  const stubs: Stub[] = [];
  for (const [column, facing] of [
    [left, 'in'],
    [right, 'out'],
  ] as const) {
    let top = (height - column.height) / 2;
    for (const { terminal, wires } of column.leads) {
      const y = top + slotHeight(wires) / 2;
      top += slotHeight(wires);
      const inside = facing === 'in' ? STUB + 4 : width - STUB - 4;
      wireTo(shapes, facing === 'in' ? [0, y] : [width - STUB, y], facing === 'in' ? [STUB, y] : [width, y]);
      shapes.push({
        kind: 'text',
        at: { x: inside, y: y + 3 },
        text: terminal,
        size: TERMINAL_SIZE,
        anchor: facing === 'in' ? 'start' : 'end',
        role: 'terminal',
      });
      stubs.push({ terminal, facing, y, wires });
    }
  }
  return { width, height, shapes, stubs };
}

/** Terminals that metal joins: each group is a bar with its leads soldered on. */
export function drawJoint(part: PicturePart, leads: readonly Lead[], least: number): Figure {
  const [left, right] = columnsOf(leads, leadFor);
  const width = Math.max(least, left.width + right.width + 12 * (part.joined.length + 1));
  const height = Math.max(left.height, right.height, 26);
  const shapes: Shape[] = [];
  const stubs: Stub[] = [];
  const ys = new Map<string, number>();
  const bars = part.joined.map((group, index) => ({ group, x: left.width + 12 * (index + 1) }));
  for (const [column, facing] of [
    [left, 'in'],
    [right, 'out'],
  ] as const) {
    let top = (height - column.height) / 2;
    for (const { terminal, wires } of column.leads) {
      const y = top + slotHeight(wires) / 2;
      top += slotHeight(wires);
      ys.set(terminal, y);
      const edge = facing === 'in' ? 0 : width;
      const bar = bars.find(({ group }) => group.includes(terminal));
      const x = bar?.x ?? (facing === 'in' ? left.width : width - right.width);
      wireTo(shapes, [edge, y], [x, y]);
      if (bar) shapes.push({ kind: 'circle', centre: { x, y }, radius: 2.5, filled: true });
      shapes.push(
        terminalText(terminal, facing === 'in' ? 4 : width - 4, y, facing === 'in' ? 'start' : 'end'),
      );
      stubs.push({ terminal, facing, y, wires });
    }
  }
  for (const { group, x } of bars) {
    const own = group.flatMap((terminal) => ys.get(terminal) ?? []);
    if (own.length > 1) wireTo(shapes, [x, Math.min(...own)], [x, Math.max(...own)]);
  }
  return { width, height, shapes, stubs };
}
