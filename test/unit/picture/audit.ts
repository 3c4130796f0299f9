/** Counts what a person would find fault with in a picture, from the boxes that it was drawn from. */
import type { Layout } from '../../../server/src/picture/layout';
import { boxOfPiece, labelNets, type Piece, piecesOf } from '../../../server/src/picture/net-labels';
import { type Box, boxOf, overlaps, type Point, type Shape } from '../../../server/src/picture/shapes';

export interface Audit {
  /** Labels that lie on a symbol, on the board or on another label. */
  readonly overlaps: readonly string[];
  /** Wires that run through a part, the board or a label. */
  readonly through: readonly string[];
  /** Two wires on one line. */
  readonly shared: readonly string[];
  readonly crossings: number;
  readonly nets: number;
  /** Nets whose name found no room. */
  readonly unnamed: readonly string[];
}

interface Named {
  readonly what: string;
  readonly box: Box;
}

/** The strokes of a symbol, as boxes; terminal names stand in their own part and are held against the rest of it. */
function strokeBoxes(shapes: readonly Shape[]): Box[] {
  return shapes.flatMap((shape): Box[] => {
    switch (shape.kind) {
      case 'line': {
        const closed =
          shape.style === 'closed' ? [...shape.points, ...shape.points.slice(0, 1)] : shape.points;
        return piecesOf(closed).flatMap((piece) => steps(piece).map((each) => boxOfPiece(each, 0.75)));
      }
      case 'arc':
        return [boxOfPiece({ a: shape.from, b: shape.to }, 0.75)];
      case 'circle':
        return [
          {
            x: shape.centre.x - shape.radius,
            y: shape.centre.y - shape.radius,
            width: 2 * shape.radius,
            height: 2 * shape.radius,
          },
        ];
      case 'text':
        return [];
      default:
        return [];
    }
  });
}

/** A slanting line as short pieces, whose boxes follow it. */
function steps({ a, b }: Piece): Piece[] {
  if (a.x === b.x || a.y === b.y) return [{ a, b }];
  const count = 8;
  const at = (share: number) => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
  return Array.from({ length: count }, (_, index) => ({ a: at(index / count), b: at((index + 1) / count) }));
}

function around(points: readonly Point[]): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

export function audit(layout: Layout): Audit {
  const { board, parts, wires } = layout;
  const { labels, left } = labelNets(layout);
  const boardBox: Named = { what: 'board', box: { x: 0, y: 0, width: board.width, height: board.height } };
  const texts: Named[] = [
    ...parts.flatMap(({ part, texts: own, shapes }) => [
      ...own.map((text) => ({ what: `${part.id} "${text.text}"`, box: boxOf(text) })),
      ...shapes.flatMap((shape) =>
        shape.kind === 'text' ? [{ what: `${part.id} "${shape.text}"`, box: boxOf(shape) }] : [],
      ),
    ]),
    ...labels.map(({ text }) => ({ what: `net "${text.text}"`, box: boxOf(text) })),
  ];
  const marks: Named[] = parts.flatMap(({ part, mark }) =>
    mark
      ? [{ what: `mark of ${part.id}`, box: { x: mark.x - 8, y: mark.y - 8, width: 16, height: 16 } }]
      : [],
  );
  const found: string[] = [];
  const all = [...texts, ...marks];
  const strokes = new Map(parts.map(({ part, shapes }) => [part.id, strokeBoxes(shapes)] as const));
  all.forEach((one, index) => {
    for (const other of all.slice(index + 1))
      if (overlaps(one.box, other.box, -0.1)) found.push(`${one.what} on ${other.what}`);
    if (overlaps(one.box, boardBox.box)) found.push(`${one.what} on the board`);
    for (const { part, shapes, box: body } of parts) {
      if (!overlaps(one.box, body)) continue;
      // A sign inside a symbol belongs to it.
      const own = shapes.some(
        (shape) =>
          shape.kind === 'text' && shape.role === 'sign' && `${part.id} "${shape.text}"` === one.what,
      );
      if (!own && (strokes.get(part.id) ?? []).some((box) => overlaps(one.box, box, -0.1)))
        found.push(`${one.what} on ${part.id}`);
    }
  });
  board.texts.forEach((one, index) => {
    for (const other of board.texts.slice(index + 1)) {
      if (overlaps(boxOf(one), boxOf(other), -0.1)) found.push(`"${one.text}" on "${other.text}"`);
    }
  });
  const bodies: Named[] = [boardBox, ...parts.map(({ part, box }) => ({ what: part.id, box })), ...all];
  const runs = wires.map(({ wire, points }) => ({
    id: wire.id,
    pieces: piecesOf(points),
    whole: around(points),
  }));
  const through = runs.flatMap(({ id, pieces, whole }) =>
    bodies
      .filter(
        ({ box }) =>
          overlaps(whole, box) && pieces.some((piece) => overlaps(boxOfPiece(piece, 0), box, -0.5)),
      )
      .map(({ what }) => `${id} through ${what}`),
  );
  let crossings = 0;
  const shared: string[] = [];
  runs.forEach((one, index) => {
    for (const other of runs.slice(index + 1)) {
      if (!overlaps(one.whole, other.whole, 1)) continue;
      for (const p of one.pieces) {
        for (const q of other.pieces) {
          const levelP = p.a.y === p.b.y;
          const levelQ = q.a.y === q.b.y;
          if (!overlaps(boxOfPiece(p, 0.01), boxOfPiece(q, 0.01))) continue;
          if (levelP !== levelQ) crossings++;
          else shared.push(`${one.id} along ${other.id}`);
        }
      }
    }
  });
  return { overlaps: found, through, shared, crossings, nets: labels.length + left.length, unnamed: left };
}
