/**
 * Puts board, parts and wires in place. The layered layout of the ELK library does it: the board is one node whose
 * ports are fixed in the order of its headers, every wire end has a port of its own, so that no two wires share a lane.
 */
import type { ElkExtendedEdge, ElkNode, ElkPort } from 'elkjs/lib/elk-api';
import { formatQuantity } from '../base/quantity';
import { arrange, terminalKey } from './arrange';
import { type BoardFigure, drawBoard, holeKey } from './board-figure';
import type { PictureEnd, PictureModel, PicturePart, PictureWire } from './model';
import { drawPart, type Figure, type Lead, WIRE_PITCH } from './part-figure';
import { type Box, mirror, type Point, type Shape, shorten, type TextShape, widthOf } from './shapes';

export interface PlacedPart {
  readonly part: PicturePart;
  /** The symbol with its leads. */
  readonly box: Box;
  readonly shapes: readonly Shape[];
  readonly texts: readonly TextShape[];
  /** Where its wires meet it, by terminal. */
  readonly terminals: readonly { readonly terminal: string; readonly points: readonly Point[] }[];
  readonly mark?: Point;
}

export interface PlacedWire {
  readonly wire: PictureWire;
  readonly points: readonly Point[];
}

/** Everything in place, in pixels; the board's upper left corner is (0, 0). */
export interface Layout {
  readonly model: PictureModel;
  readonly board: BoardFigure;
  readonly parts: readonly PlacedPart[];
  readonly wires: readonly PlacedWire[];
}

const OPTIONS: Readonly<Record<string, string>> = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.randomSeed': '1',
  'elk.layered.considerModelOrder.strategy': 'NODES_AND_EDGES',
  'elk.layered.nodePlacement.strategy': 'BRANDES_KOEPF',
  'elk.layered.thoroughness': '10',
  'elk.spacing.nodeNode': '22',
  'elk.spacing.edgeEdge': '12',
  'elk.spacing.edgeNode': '14',
  'elk.layered.spacing.nodeNodeBetweenLayers': '48',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '10',
  'elk.layered.spacing.edgeNodeBetweenLayers': '14',
};

/** Parts in a column keep the order of their pins: stiller under edits, and too slow for the largest builds. */
const ORDERED = { 'elk.layered.crossingMinimization.forceNodeModelOrder': 'true' };
const MOST_ORDERED = 200;

const BOARD = 'board';
export const NAME_SIZE = 11;
export const VALUE_SIZE = 9;
const MARK_ROOM = 18;

interface Prepared {
  readonly part: PicturePart;
  readonly left: boolean;
  readonly figure: Figure;
  readonly lines: readonly Pick<TextShape, 'text' | 'size' | 'role'>[];
  readonly head: number;
}

export async function layOut(model: PictureModel): Promise<Layout> {
  const wiresAt = new Map<string, number>();
  for (const end of model.wires.flatMap(({ ends }) => ends)) {
    wiresAt.set(keyOf(end), (wiresAt.get(keyOf(end)) ?? 0) + 1);
  }
  const board = drawBoard(model, wiresAt);
  const { sides, ranks, facings, rankOf, farOf } = arrange(model, board);
  const prepared = [...model.parts]
    .sort((a, b) => (ranks.get(a.id) ?? 0) - (ranks.get(b.id) ?? 0))
    .map((part) => prepare(part, sides.get(part.id) === 'left', leadsOf(part)));
  const ports = portsOf();
  const children: ElkNode[] = [
    nodeOf(BOARD, board.width, board.height),
    ...prepared.map(({ part, figure, head }) => nodeOf(`p${part.id}`, figure.width, figure.height + head)),
  ];
  const edges = edgesOf();
  const { default: Elk } = await import('elkjs/lib/elk.bundled.js');
  const placed = await new Elk().layout({
    id: 'root',
    layoutOptions: { ...OPTIONS, ...(model.wires.length <= MOST_ORDERED && ORDERED) },
    children,
    edges,
  });
  return settle(placed);

  function leadsOf(part: PicturePart): Lead[] {
    return part.terminals.map(({ id }) => {
      const key = terminalKey(part.id, id);
      const ends = model.wires.flatMap(({ ends: [a, b] }) => [
        ...(keyOf(a) === key ? [b] : []),
        ...(keyOf(b) === key ? [a] : []),
      ]);
      const rank = ends.reduce((sum, end) => sum + rankOf(end), 0) / Math.max(1, ends.length);
      return { terminal: id, facing: facings.get(key) ?? 'in', wires: ends.length, rank };
    });
  }

  /** Port ids by wire and end, and the ports of each node. Wires on one terminal lie in the order of their far ends. */
  function portsOf() {
    const places = new Map<string, { x: number; y: number; side: 'EAST' | 'WEST'; node: string }>();
    for (const { side, y, header, hole } of board.holes) {
      const x = side === 'left' ? 0 : board.width;
      const key = holeKey(header.id, hole.index, hole.pin);
      places.set(`h${key}`, { x, y, side: side === 'left' ? 'WEST' : 'EAST', node: BOARD });
    }
    for (const { part, left, figure, head } of prepared) {
      for (const { terminal, facing, y } of figure.stubs) {
        const west = (facing === 'in') !== left;
        const x = west ? 0 : figure.width;
        places.set(terminalKey(part.id, terminal), {
          x,
          y: y + head,
          side: west ? 'WEST' : 'EAST',
          node: `p${part.id}`,
        });
      }
    }
    const waiting = new Map<string, { id: string; rank: number }[]>();
    for (const { id, ends } of model.wires) {
      ends.forEach((end, index) => {
        const other = ends[1 - index];
        const list = waiting.get(keyOf(end)) ?? [];
        waiting.set(keyOf(end), list);
        list.push({ id: `${id}:${index}`, rank: other ? rankOf(other) : 0 });
      });
    }
    const byNode = new Map<string, ElkPort[]>();
    const known = new Set<string>();
    for (const [key, list] of waiting) {
      const at = places.get(key);
      if (!at) continue;
      const own = byNode.get(at.node) ?? [];
      byNode.set(at.node, own);
      list.sort((a, b) => a.rank - b.rank);
      list.forEach(({ id }, index) => {
        known.add(id);
        const y = at.y + (index - (list.length - 1) / 2) * WIRE_PITCH;
        own.push({ id, x: at.x, y, width: 0, height: 0, layoutOptions: { 'elk.port.side': at.side } });
      });
    }
    return { byNode, known };
  }

  function nodeOf(id: string, width: number, height: number): ElkNode {
    const own = [...(ports.byNode.get(id) ?? [])].sort((a, b) => (a.y ?? 0) - (b.y ?? 0));
    return { id, width, height, ports: own, layoutOptions: { 'elk.portConstraints': 'FIXED_POS' } };
  }

  /** From left to right, for the layers follow the edges: far parts of the left side first, the board in the middle. */
  function edgesOf(): ElkExtendedEdge[] {
    const columnOf = (end: PictureEnd) => {
      if (end.kind === 'hole') return 0;
      return sides.get(end.part) === 'left' ? -farOf(end.part) : farOf(end.part);
    };
    return [...model.wires]
      .map((wire) => ({ wire, rank: Math.min(...wire.ends.map(rankOf)) }))
      .sort((a, b) => a.rank - b.rank)
      .flatMap(({ wire: { id, ends } }) => {
        if (!ports.known.has(`${id}:0`) || !ports.known.has(`${id}:1`)) return [];
        const [from, to] = columnOf(ends[0]) <= columnOf(ends[1]) ? [0, 1] : [1, 0];
        return [{ id, sources: [`${id}:${from}`], targets: [`${id}:${to}`] }];
      });
  }

  function settle({ children: nodes = [], edges: routes = [] }: ElkNode): Layout {
    const middle = nodes.find(({ id }) => id === BOARD);
    const [dx, dy] = [-(middle?.x ?? 0), -(middle?.y ?? 0)];
    const byId = new Map(nodes.map((node) => [node.id, node] as const));
    const parts = prepared.map((each) => {
      const node = byId.get(`p${each.part.id}`);
      const own = new Map((node?.ports ?? []).map((port) => [port.id, port] as const));
      const at = { x: (node?.x ?? 0) + dx, y: (node?.y ?? 0) + dy };
      return placePart(each, at, (id) => own.get(id), model.wires);
    });
    const wires = routes.flatMap((route): PlacedWire[] => {
      const wire = model.wires.find(({ id }) => id === route.id);
      const [section] = (route as ElkExtendedEdge).sections ?? [];
      if (!wire || !section) return [];
      const points = [section.startPoint, ...(section.bendPoints ?? []), section.endPoint];
      return [{ wire, points: points.map(({ x, y }) => ({ x: x + dx, y: y + dy })) }];
    });
    return { model, board, parts, wires };
  }
}

function keyOf(end: PictureEnd): string {
  return end.kind === 'terminal'
    ? terminalKey(end.part, end.terminal)
    : `h${holeKey(end.header, end.index, end.pin)}`;
}

function prepare(part: PicturePart, left: boolean, leads: readonly Lead[]): Prepared {
  const symbolic = part.symbols.length === 1 && part.symbols[0]?.type !== 'load';
  const second = symbolic && part.value !== '' ? part.value : part.title;
  const lines = [
    { text: shorten(part.id, 24), size: NAME_SIZE, role: 'name' as const },
    { text: shorten(second, 26), size: VALUE_SIZE, role: 'value' as const },
    ...(part.amps === undefined
      ? []
      : [{ text: formatQuantity(part.amps, 'A', 2), size: VALUE_SIZE, role: 'amps' as const }]),
  ];
  const room = lines.map(({ text, size }) => widthOf(text, size));
  if (part.marks.length > 0) room[0] = (room[0] ?? 0) + 2 * MARK_ROOM;
  const figure = drawPart(part, leads, Math.ceil(Math.max(...room) + 8));
  const head = 18 + 11.5 * (lines.length - 1);
  return { part, left, figure, lines, head };
}

function placePart(
  { part, left, figure, lines, head }: Prepared,
  at: Point,
  portOf: (id: string) => ElkPort | undefined,
  wires: readonly PictureWire[],
): PlacedPart {
  const { width, height } = figure;
  const shift = (shape: Shape) => moved(left ? mirror(shape, width) : shape, at.x, at.y + head);
  const texts = lines.map(
    ({ text, size, role }, index): TextShape => ({
      kind: 'text',
      at: { x: at.x + width / 2, y: at.y + 11 + index * 11.5 },
      text,
      size,
      anchor: 'middle',
      role,
    }),
  );
  const terminals = figure.stubs.map(({ terminal, facing, y }) => {
    const key = terminalKey(part.id, terminal);
    const points = wires.flatMap(({ id, ends }) =>
      ends.flatMap((end, index) => {
        const port = keyOf(end) === key ? portOf(`${id}:${index}`) : undefined;
        return port ? [{ x: at.x + (port.x ?? 0), y: at.y + (port.y ?? 0) }] : [];
      }),
    );
    const west = (facing === 'in') !== left;
    return {
      terminal,
      points: points.length > 0 ? points : [{ x: at.x + (west ? 0 : width), y: at.y + head + y }],
    };
  });
  const nameWidth = widthOf(lines[0]?.text ?? '', NAME_SIZE);
  return {
    part,
    box: { x: at.x, y: at.y + head, width, height },
    shapes: figure.shapes.map(shift),
    texts,
    terminals,
    ...(part.marks.length > 0 && { mark: { x: at.x + width / 2 + nameWidth / 2 + 11, y: at.y + 7 } }),
  };
}

function moved(shape: Shape, dx: number, dy: number): Shape {
  const move = ({ x, y }: Point): Point => ({ x: x + dx, y: y + dy });
  switch (shape.kind) {
    case 'line':
      return { ...shape, points: shape.points.map(move) };
    case 'arc':
      return { ...shape, from: move(shape.from), to: move(shape.to) };
    case 'circle':
      return { ...shape, centre: move(shape.centre) };
    case 'text':
      return { ...shape, at: move(shape.at) };
  }
}
