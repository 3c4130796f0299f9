/**
 * Names of nets, each once over the straight piece of one of its wires that has room for it. A name that finds none is
 * left out and counted: the wire tells it all the same when one points at it.
 */
import type { Layout } from './layout';
import { type Box, boxOf, overlaps, type Point, shorten, type TextShape, widthOf } from './shapes';

export interface NetLabel {
  readonly net: string;
  readonly text: TextShape;
}

const SIZE = 8.5;

/** Boxes of everything that a name must not lie on, wires aside. */
export function solidBoxes({ board, parts }: Layout): Box[] {
  return [
    { x: 0, y: 0, width: board.width, height: board.height },
    ...parts.flatMap(({ box, texts }) => [box, ...texts.map(boxOf)]),
  ];
}

export interface Piece {
  readonly a: Point;
  readonly b: Point;
}

export function piecesOf(points: readonly Point[]): Piece[] {
  return points.slice(1).map((b, index) => ({ a: points[index] ?? b, b }));
}

export function boxOfPiece({ a, b }: Piece, half: number): Box {
  return {
    x: Math.min(a.x, b.x) - half,
    y: Math.min(a.y, b.y) - half,
    width: Math.abs(a.x - b.x) + 2 * half,
    height: Math.abs(a.y - b.y) + 2 * half,
  };
}

export function labelNets(layout: Layout): {
  readonly labels: readonly NetLabel[];
  readonly left: readonly string[];
} {
  const solid = solidBoxes(layout);
  const lanes = layout.wires.flatMap(({ points }) => piecesOf(points).map((piece) => boxOfPiece(piece, 2.5)));
  const nets = new Map<string, Piece[]>();
  for (const { wire, points } of layout.wires) {
    if (wire.net === '') continue;
    const level = piecesOf(points).filter(({ a, b }) => a.y === b.y);
    nets.set(wire.net, [...(nets.get(wire.net) ?? []), ...level]);
  }
  const labels: NetLabel[] = [];
  const left: string[] = [];
  for (const [net, pieces] of nets) {
    const text = shorten(net, 16);
    const longest = [...pieces].sort((p, q) => Math.abs(q.a.x - q.b.x) - Math.abs(p.a.x - p.b.x));
    const found = longest
      .flatMap((piece) => placesOn(piece, text))
      .find((label) => {
        const box = boxOf(label);
        return (
          !solid.some((each) => overlaps(box, each, 1)) &&
          !lanes.some((each) => overlaps(box, each)) &&
          !labels.some((each) => overlaps(box, boxOf(each.text), 2))
        );
      });
    if (found) labels.push({ net, text: found });
    else left.push(net);
  }
  return { labels, left };
}

/** Over the middle of a piece, then along it; under it where there is no room above. */
function placesOn({ a, b }: Piece, text: string): TextShape[] {
  const [from, to] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const width = widthOf(text, SIZE);
  if (to - from < width + 6) return [];
  const shares = [0.5, 0.25, 0.75, 0, 1];
  return [-5, SIZE * 0.8 + 4].flatMap((shift) =>
    shares.map(
      (share): TextShape => ({
        kind: 'text',
        at: { x: from + 3 + width / 2 + share * (to - from - width - 6), y: a.y + shift },
        text,
        size: SIZE,
        anchor: 'middle',
        role: 'terminal',
      }),
    ),
  );
}
