/** The run of a wire as a path with rounded corners, and the place on it for a marker. */
import { piecesOf } from './net-labels';
import type { Point } from './shapes';

const RADIUS = 5;
const num = (value: number): string => String(Math.round(value * 10) / 10);

export function roundedPath(points: readonly Point[]): string {
  const [first] = points;
  if (!first) return '';
  let path = `M${num(first.x)} ${num(first.y)}`;
  points.slice(1).forEach((corner, index) => {
    const next = points[index + 2];
    const before = points[index] ?? corner;
    if (!next) {
      path += `L${num(corner.x)} ${num(corner.y)}`;
      return;
    }
    const into = toward(corner, before);
    const out = toward(corner, next);
    path += `L${num(into.x)} ${num(into.y)}Q${num(corner.x)} ${num(corner.y)} ${num(out.x)} ${num(out.y)}`;
  });
  return path;
}

/** A point near the corner on the way to a neighbour, no further than half of it. */
function toward(corner: Point, other: Point): Point {
  const length = Math.hypot(other.x - corner.x, other.y - corner.y);
  if (length === 0) return corner;
  const share = Math.min(RADIUS, length / 2) / length;
  return { x: corner.x + (other.x - corner.x) * share, y: corner.y + (other.y - corner.y) * share };
}

/** The middle of the longest straight piece. */
export function wireMark(points: readonly Point[]): Point {
  const lengthOf = ({ a, b }: { a: Point; b: Point }) => Math.hypot(a.x - b.x, a.y - b.y);
  const [longest] = piecesOf(points).sort((p, q) => lengthOf(q) - lengthOf(p));
  if (!longest) return points[0] ?? { x: 0, y: 0 };
  return { x: (longest.a.x + longest.b.x) / 2, y: (longest.a.y + longest.b.y) / 2 };
}
