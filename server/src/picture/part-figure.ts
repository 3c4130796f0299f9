/**
 * A part as it is drawn on the right of the board: symbols, leads and the places where its wires are soldered. Ends
 * that lead back to the board lie on the left. On the left of the board everything is mirrored.
 */

import { drawBlock, drawJoint } from './block-figure';
import type { PicturePart, PictureSymbol } from './model';
import { lying, type Shape, upright, widthOf } from './shapes';
import { drawSymbol, LENGTH, REACH } from './symbols';
import { drawThreeEnded, isThreeEnded } from './three-ended';

export type Facing = 'in' | 'out';

/** What the figure has to know of one terminal. */
export interface Lead {
  readonly terminal: string;
  readonly facing: Facing;
  /** Wires soldered to it. */
  readonly wires: number;
  /** Where its wires come from, top to bottom. */
  readonly rank: number;
}

/** Where one terminal comes to lie: on which side, and at which height its wires meet it. */
export interface Stub {
  readonly terminal: string;
  readonly facing: Facing;
  readonly y: number;
  readonly wires: number;
}

export interface Figure {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  readonly stubs: readonly Stub[];
}

export const TERMINAL_SIZE = 8.5;
/** Between two wires on one terminal. */
export const WIRE_PITCH = 10;

export const slotHeight = (wires: number): number => Math.max(22, wires * WIRE_PITCH + 10);

/** Length of a lead that has its terminal's name written over it. */
export const leadFor = (terminal: string): number => Math.max(14, widthOf(terminal, TERMINAL_SIZE) + 8);

export function terminalText(terminal: string, x: number, y: number, anchor: 'start' | 'end'): Shape {
  return {
    kind: 'text',
    at: { x, y: y - 3.5 },
    text: terminal,
    size: TERMINAL_SIZE,
    anchor,
    role: 'terminal',
  };
}

/** @param least width that the words above it need. */
export function drawPart(part: PicturePart, leads: readonly Lead[], least: number): Figure {
  if (part.symbols.length === 0 && part.joined.length > 0) return drawJoint(part, leads, least);
  if (isThreeEnded(part)) return drawThreeEnded(part, leads, least);
  const clusters = clustersOf(part);
  return clusters ? stack(clusters, leads, least) : drawBlock(leads, least);
}

/** Symbols that share one terminal; undefined where a symbol is none of two ends or the sharing is a tangle. */
function clustersOf(part: PicturePart): PictureSymbol[][] | undefined {
  const plain = part.symbols.filter(
    ({ type }) => type !== 'logic' && type !== 'transistor' && type !== 'potentiometer',
  );
  if (plain.length === 0 || plain.length < part.symbols.length || plain.length > 12) return undefined;
  const drawn = new Set(plain.flatMap(({ ends }) => ends));
  if (part.terminals.some(({ id }) => !drawn.has(id))) return undefined;
  const clusters: PictureSymbol[][] = [];
  for (const symbol of plain) {
    const touching = clusters.filter((cluster) =>
      cluster.some(({ ends }) => ends.some((end) => symbol.ends.includes(end))),
    );
    if (touching.length > 1) return undefined;
    if (touching[0]) touching[0].push(symbol);
    else clusters.push([symbol]);
  }
  return clusters.every((cluster) => cluster.length === 1 || sharedOf(cluster) !== undefined)
    ? clusters
    : undefined;
}

function sharedOf(cluster: readonly PictureSymbol[]): string | undefined {
  const [first, ...others] = cluster;
  const shared = first?.ends.filter((end) => others.every(({ ends }) => ends.includes(end))) ?? [];
  // Two primitives between the same two terminals are not told apart by a fan.
  return shared.length === 1 ? shared[0] : undefined;
}

/** From a part's edge to its terminals' names; an enclosure's outline lies between. */
const BARE = 4;
const ENCLOSED = 11;

interface Row {
  readonly height: number;
  readonly width: number;
  readonly draw: (top: number, width: number, inset: number, shapes: Shape[], stubs: Stub[]) => void;
}

function stack(clusters: readonly PictureSymbol[][], leads: readonly Lead[], least: number): Figure {
  const leadOf = (terminal: string): Lead =>
    leads.find((lead) => lead.terminal === terminal) ?? { terminal, facing: 'in', wires: 0, rank: 0 };
  const rankOf = (cluster: readonly PictureSymbol[]) => {
    const ranks = cluster.flatMap(({ ends }) => ends.map(leadOf)).filter(({ wires }) => wires > 0);
    return ranks.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...ranks.map(({ rank }) => rank));
  };
  const rows = [...clusters]
    .sort((a, b) => rankOf(a) - rankOf(b) || 0)
    .map((cluster): Row => {
      const [first] = cluster;
      if (cluster.length > 1 || !first) return fanRow(cluster, leadOf);
      const [a, b] = [leadOf(first.ends[0]), leadOf(first.ends[1])];
      return a.facing === b.facing ? bentRow(first, a, b) : throughRow(first, a, b);
    });
  const enclosed = clusters.length > 1 || (clusters[0]?.length ?? 0) > 1;
  const margin = enclosed ? 5 : 0;
  const width = Math.max(least, ...rows.map((row) => row.width + (enclosed ? 16 : 0)));
  const shapes: Shape[] = [];
  const stubs: Stub[] = [];
  let top = margin;
  for (const row of rows) {
    row.draw(top, width, enclosed ? ENCLOSED : BARE, shapes, stubs);
    top += row.height;
  }
  const height = top + margin;
  if (enclosed) shapes.push(frame(6, 0, width - 6, height, 'dashed'));
  return { width, height, shapes, stubs };
}

export function frame(
  left: number,
  top: number,
  right: number,
  bottom: number,
  style: 'dashed' | 'closed',
): Shape {
  const corners = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  const [first] = corners;
  return style === 'closed' || !first
    ? { kind: 'line', points: corners, style }
    : { kind: 'line', points: [...corners, first], style };
}

export function wireTo(shapes: Shape[], ...points: readonly (readonly [number, number])[]): void {
  shapes.push({ kind: 'line', points: points.map(([x, y]) => ({ x, y })) });
}

/** From one side to the other. */
function throughRow(symbol: PictureSymbol, a: Lead, b: Lead): Row {
  const [left, right] = a.facing === 'in' ? [a, b] : [b, a];
  const height = Math.max(2 * REACH + 4, slotHeight(left.wires), slotHeight(right.wires));
  return {
    height,
    width: leadFor(left.terminal) + LENGTH + leadFor(right.terminal),
    draw(top, width, inset, shapes, stubs) {
      const y = top + height / 2;
      const start = (width - LENGTH + leadFor(left.terminal) - leadFor(right.terminal)) / 2;
      wireTo(shapes, [0, y], [start, y]);
      wireTo(shapes, [start + LENGTH, y], [width, y]);
      shapes.push(...drawSymbol(symbol, lying(start, y), left === b));
      shapes.push(
        terminalText(left.terminal, inset, y, 'start'),
        terminalText(right.terminal, width - inset, y, 'end'),
      );
      stubs.push({ terminal: left.terminal, facing: 'in', y, wires: left.wires });
      stubs.push({ terminal: right.terminal, facing: 'out', y, wires: right.wires });
    },
  };
}

/** Both ends on one side: the symbol stands upright between them. */
function bentRow(symbol: PictureSymbol, a: Lead, b: Lead): Row {
  const [upper, lower] = a.rank <= b.rank ? [a, b] : [b, a];
  const [above, below] = [slotHeight(upper.wires) / 2, slotHeight(lower.wires) / 2];
  const span = Math.max(LENGTH, above + below);
  const lead = Math.max(leadFor(upper.terminal), leadFor(lower.terminal)) + 8;
  const height = above + span + below;
  return {
    height,
    width: lead + REACH + 10,
    draw(top, width, inset, shapes, stubs) {
      const out = a.facing === 'out';
      const reach = lead + inset - BARE;
      const [edge, x] = out ? [width, width - reach] : [0, reach];
      const [first, last] = [top + above, top + above + span];
      const start = (first + last - LENGTH) / 2;
      wireTo(shapes, [edge, first], [x, first], [x, start]);
      wireTo(shapes, [x, start + LENGTH], [x, last], [edge, last]);
      shapes.push(...drawSymbol(symbol, upright(x, start), upper === b));
      for (const [each, y] of [
        [upper, first],
        [lower, last],
      ] as const) {
        shapes.push(terminalText(each.terminal, out ? width - inset : inset, y, out ? 'end' : 'start'));
        stubs.push({ terminal: each.terminal, facing: each.facing, y, wires: each.wires });
      }
    },
  };
}

/** Several symbols with one end in common, which lies across from the others. */
function fanRow(cluster: readonly PictureSymbol[], leadOf: (terminal: string) => Lead): Row {
  const common = leadOf(sharedOf(cluster) ?? '');
  const owns = cluster.map(({ ends }) => leadOf(ends.find((end) => end !== common.terminal) ?? ''));
  // The many decide; the common end goes across.
  const votes = owns.reduce((sum, { facing, wires }) => sum + (facing === 'out' ? -wires : wires), 0);
  const out = votes > 0 || (votes === 0 && common.facing === 'out');
  const shared: Lead = { ...common, facing: out ? 'out' : 'in' };
  const rows = cluster
    .map((symbol) => ({ symbol, own: leadOf(symbol.ends.find((end) => end !== shared.terminal) ?? '') }))
    .sort((a, b) => a.own.rank - b.own.rank);
  const heights = rows.map(({ own }) => Math.max(2 * REACH, slotHeight(own.wires)));
  const height = heights.reduce((sum, each) => sum + each, 0);
  const ownLead = Math.max(...rows.map(({ own }) => leadFor(own.terminal)));
  const lead = leadFor(shared.terminal) + 4;
  return {
    height,
    width: ownLead + LENGTH + lead,
    draw(top, width, inset, shapes, stubs) {
      const at = (x: number) => (out ? x : width - x);
      const bus = width - lead - inset + BARE;
      let y = top;
      const heightsOf: number[] = [];
      rows.forEach(({ symbol, own }, index) => {
        const middle = y + (heights[index] ?? 0) / 2;
        y += heights[index] ?? 0;
        heightsOf.push(middle);
        const start = bus - LENGTH;
        wireTo(shapes, [at(0), middle], [at(start), middle]);
        const turned = (symbol.ends[0] === shared.terminal) === out;
        shapes.push(...drawSymbol(symbol, lying(out ? start : width - bus, middle), turned));
        shapes.push(terminalText(own.terminal, at(inset), middle, out ? 'start' : 'end'));
        stubs.push({ terminal: own.terminal, facing: out ? 'in' : 'out', y: middle, wires: own.wires });
      });
      const [first = 0, last = 0] = [heightsOf[0], heightsOf.at(-1)];
      const middle = (first + last) / 2;
      wireTo(shapes, [at(bus), first], [at(bus), last]);
      wireTo(shapes, [at(bus), middle], [at(width), middle]);
      shapes.push(terminalText(shared.terminal, at(width - inset), middle, out ? 'end' : 'start'));
      stubs.push({ terminal: shared.terminal, facing: shared.facing, y: middle, wires: shared.wires });
    },
  };
}
