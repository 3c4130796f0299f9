/**
 * Writes a layout as SVG. Every word of the user's goes through one escape; nothing in the file links, loads or runs.
 */
import { formatQuantity } from '../base/quantity';
import type { Span } from '../base/span';
import { escapeHtml } from '../documents/escape';
import type { HoleFigure } from './board-figure';
import { type Layout, layOut, type PlacedPart, type PlacedWire } from './layout';
import type { Mark, PictureModel } from './model';
import { labelNets, type NetLabel } from './net-labels';
import { boxOf, type Point, type Shape, shorten, type TextShape, widthOf } from './shapes';
import { STYLE } from './style';
import { roundedPath, wireMark } from './wire-path';

/** The picture as an SVG file. The same model gives the same bytes. */
export async function drawPicture(model: PictureModel): Promise<string> {
  return writeSvg(await layOut(model));
}

/** Text in an element or an attribute; what no XML file may hold is left out. */
function safe(text: string): string {
  return escapeHtml(text).replace(/[\ufffe\uffff]|\p{Surrogate}/gu, '\ufffd');
}

const num = (value: number): string => String(Math.round(value * 10) / 10);
/** Height of the title's line. */
const HEADING = 26;
const spanWords = ({ file, start, end }: Span): string => `${file}:${start}-${end}`;
const attribute = (name: string, value: string): string => ` ${name}="${safe(value)}"`;
const title = (text: string): string => `<title>${safe(text)}</title>`;

export function writeSvg(layout: Layout): string {
  const { model, board, parts, wires } = layout;
  const { labels } = labelNets(layout);
  const heading = model.revision === undefined ? model.title : `${model.title}, revision ${model.revision}`;
  const room = viewOf(layout, labels, widthOf(shorten(heading, 60), 14));
  const lines = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="wt" role="img" viewBox="${room.map(num).join(' ')}" width="${num(room[2])}" height="${num(room[3])}">`,
    title(heading),
    `<desc>${safe(`Wiring of ${model.title}: ${parts.length} parts, ${wires.length} wires on ${model.board}.`)}</desc>`,
    `<style>${STYLE}</style>`,
    `<rect class="paper" x="${num(room[0])}" y="${num(room[1])}" width="${num(room[2])}" height="${num(room[3])}"/>`,
    `<text class="name" x="${num(room[0] + 16)}" y="${num(room[1] + 24)}" font-size="14">${safe(shorten(heading, 60))}</text>`,
    `<g class="board" aria-label="${safe(model.board)}">`,
    `<rect class="frame" x="0" y="0" width="${num(board.width)}" height="${num(board.height)}" rx="6"/>`,
    ...board.texts.map((text) => drawText(text)),
    '</g>',
    '<g class="wires">',
    ...wires.map(drawWire),
    '</g>',
    '<g class="parts">',
    ...parts.map(drawPlaced),
    '</g>',
    '<g class="pins">',
    ...board.holes.map((figure) => drawHole(layout, figure)),
    '</g>',
    '<g class="nets">',
    ...labels.map(({ net, text }) => `<g${attribute('data-net', net)}>${drawText(text, 'net')}</g>`),
    '</g>',
    '<g class="marks">',
    ...wires.flatMap(({ wire, points }) =>
      wire.marks.length > 0 ? [drawMark(wire.marks, wireMark(points))] : [],
    ),
    ...parts.flatMap(({ part, mark }) => (mark ? [drawMark(part.marks, mark)] : [])),
    '</g>',
    '</svg>',
  ];
  return `${lines.join('\n')}\n`;
}

/** Left, top, width and height of everything with a margin. */
function viewOf(
  { board, parts, wires }: Layout,
  labels: readonly NetLabel[],
  heading: number,
): readonly [number, number, number, number] {
  const corners: Point[] = [
    { x: 0, y: 0 },
    { x: board.width, y: board.height },
    ...wires.flatMap(({ points }) => points),
    ...[
      ...parts.flatMap(({ box, texts }) => [box, ...texts.map(boxOf)]),
      ...labels.map(({ text }) => boxOf(text)),
    ].flatMap(({ x, y, width, height }) => [
      { x, y },
      { x: x + width, y: y + height },
    ]),
  ];
  const margin = 16;
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const min = (values: readonly number[]) => values.reduce((least, value) => Math.min(least, value), 0);
  const max = (values: readonly number[]) => values.reduce((most, value) => Math.max(most, value), 0);
  const [left, top] = [min(xs) - margin, min(ys) - margin - HEADING];
  const width = Math.max(max(xs) + margin - left, heading + 2 * margin);
  return [left, top, width, max(ys) + margin - top];
}

function drawText({ at, text, size, anchor, role }: TextShape, name: string = role): string {
  const side = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  return `<text class="${name}" x="${num(at.x)}" y="${num(at.y)}" font-size="${size}"${side}>${safe(text)}</text>`;
}

function drawWire({ wire, points }: PlacedWire): string {
  const path = roundedPath(points);
  const [first, second] = wire.paints;
  const cores =
    first === undefined
      ? [`<path class="core no-colour" d="${path}"/><path class="core no-colour dots" d="${path}"/>`]
      : [
          `<path class="core" stroke="${first}" d="${path}"/>`,
          ...(second === undefined
            ? []
            : [
                `<path class="core" stroke="${second}" stroke-dasharray="7 7" stroke-linecap="butt" d="${path}"/>`,
              ]),
        ];
  const data = [
    attribute('data-wire', wire.id),
    attribute('data-net', wire.net),
    attribute('data-span', spanWords(wire.span)),
  ].join('');
  const told = [wire.words, ...(wire.net === '' ? [] : [`net ${wire.net}`])].join('\n');
  return `<g class="wire"${data}>${title(told)}<path class="halo" d="${path}"/><path class="case" d="${path}"/>${cores.join('')}</g>`;
}

function drawPlaced({ part, box, shapes, texts, terminals }: PlacedPart): string {
  const top = Math.min(box.y, ...texts.map(({ at, size }) => at.y - size));
  const amps = part.amps === undefined ? '' : attribute('data-amps', String(part.amps));
  const told = [
    `${part.id}: ${part.title}${part.value === '' ? '' : `, ${part.value}`}`,
    ...(part.purpose === undefined ? [] : [part.purpose]),
    ...(part.amps === undefined ? [] : [`${formatQuantity(part.amps, 'A')} at most, typical`]),
  ].join('\n');
  const dots = terminals.map(({ terminal, points }) => {
    const tell = part.terminals.find(({ id }) => id === terminal)?.tell;
    const ys = points.map(({ y }) => y);
    const x = points[0]?.x ?? 0;
    const bar =
      points.length > 1
        ? `<path class="stroke" d="M${num(x)} ${num(Math.min(...ys))}V${num(Math.max(...ys))}"/>`
        : '';
    const words = tell === undefined ? `${part.id}.${terminal}` : `${part.id}.${terminal}: ${tell}`;
    const circles = points.map(
      (point) => `<circle class="dot" cx="${num(point.x)}" cy="${num(point.y)}" r="2.4"/>`,
    );
    return `<g${attribute('data-terminal', `${part.id}.${terminal}`)}>${title(words)}${bar}${circles.join('')}</g>`;
  });
  return [
    `<g class="part"${attribute('data-part', part.id)}${attribute('data-span', spanWords(part.span))}${amps}>${title(told)}`,
    `<rect class="hit" x="${num(box.x)}" y="${num(top)}" width="${num(box.width)}" height="${num(box.y + box.height - top)}"/>`,
    ...shapes.map(drawShape),
    ...texts.map((text) => drawText(text)),
    ...dots,
    '</g>',
  ].join('');
}

function drawShape(shape: Shape): string {
  switch (shape.kind) {
    case 'line': {
      const { points, style } = shape;
      const path = points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${num(x)} ${num(y)}`).join('');
      const end = style === 'closed' || style === 'filled' ? 'Z' : '';
      const look = style === 'filled' ? 'filled' : style === 'dashed' ? 'stroke dashed' : 'stroke';
      return `<path class="${look}" d="${path}${end}"/>`;
    }
    case 'arc': {
      const { from, to, radius, sweep } = shape;
      return `<path class="stroke" d="M${num(from.x)} ${num(from.y)}A${radius} ${radius} 0 0 ${sweep ? 1 : 0} ${num(to.x)} ${num(to.y)}"/>`;
    }
    case 'circle':
      return `<circle class="${shape.filled ? 'filled' : 'stroke'}" cx="${num(shape.centre.x)}" cy="${num(shape.centre.y)}" r="${shape.radius}"/>`;
    case 'text':
      return drawText(shape);
  }
}

function drawHole({ board }: Layout, { header, hole, side, y, wires }: HoleFigure): string {
  const left = side === 'left';
  const x = (inset: number) => (left ? inset : board.width - inset);
  const look = `${hole.wired ? 'wired' : 'free'}${hole.supply ? ' supply' : ''}`;
  const place = hole.index > 0 ? `${hole.index}` : '–';
  const words =
    hole.index > 0
      ? `${hole.pin}, ${header.title}, ${hole.index} from ${header.landmark}`
      : `${hole.pin}: no position left`;
  const amps = hole.amps === undefined ? '' : formatQuantity(hole.amps, 'A', 2);
  const told = amps === '' ? words : `${words}\n${amps} at most, typical`;
  const text = (inset: number, size: number, role: string, value: string, anchor: 'start' | 'end') =>
    `<text class="${role}" x="${num(x(inset))}" y="${num(y + size * 0.35)}" font-size="${size}"${(anchor === 'end') === left ? ' text-anchor="end"' : ''}>${safe(value)}</text>`;
  const half = wires > 1 ? (wires - 1) * 5 : 0;
  const data = [
    attribute('data-pin', hole.pin),
    attribute('data-position', `${header.id}.${hole.index}`),
    hole.amps === undefined ? '' : attribute('data-amps', String(hole.amps)),
  ].join('');
  const markRoom = hole.marks.length > 0 ? 20 : 0;
  return [
    `<g class="pin ${look}"${data}>${title(told)}`,
    `<rect class="hit" x="${num(left ? 0 : board.width - board.countAt - 4)}" y="${num(y - 10)}" width="${num(board.countAt + 4)}" height="20"/>`,
    `<rect class="hole" x="${num(x(0) - 4)}" y="${num(y - 4 - half)}" width="8" height="${num(8 + 2 * half)}" rx="4"/>`,
    text(board.nameAt, 10, 'pin-name', shorten(hole.pin, 14), 'start'),
    text(board.countAt, 8.5, 'count', place, 'end'),
    amps === '' ? '' : text(board.countAt + 5 + markRoom, 8.5, 'amps', amps, 'start'),
    hole.marks.length > 0 ? drawMark(hole.marks, { x: x(board.markAt), y }) : '',
    '</g>',
  ].join('');
}

const GRAVITY = ['error', 'warning', 'information', 'hint'] as const;

/** Each severity has its own outline, so that the colour is not all that tells them apart. */
function drawMark(marks: readonly Mark[], { x, y }: Point): string {
  const severity = GRAVITY.find((each) => marks.some((mark) => mark.severity === each)) ?? 'hint';
  const outlines = {
    error: `<path d="M${num(x - 3.3)} ${num(y - 8)}h6.6l4.7 4.7v6.6l-4.7 4.7h-6.6l-4.7-4.7v-6.6z"/>`,
    warning: `<path d="M${num(x)} ${num(y - 8.5)}l9 16h-18z"/>`,
    information: `<circle cx="${num(x)}" cy="${num(y)}" r="7.5"/>`,
    hint: `<circle cx="${num(x)}" cy="${num(y)}" r="6"/>`,
  };
  const signs = { error: '×', warning: '!', information: 'i', hint: '·' };
  const sign = marks.length > 1 ? String(marks.length) : signs[severity];
  const [first] = marks;
  const span = first ? attribute('data-span', spanWords(first.span)) : '';
  const told = marks.map(({ rule, message }) => `${rule}: ${message}`).join('\n');
  const drop = severity === 'warning' ? 6 : 3.4;
  return `<g class="mark ${severity}"${span}${attribute('data-rules', marks.map(({ rule }) => rule).join(' '))}>${title(told)}${outlines[severity]}<text x="${num(x)}" y="${num(y + drop)}" font-size="9.5" text-anchor="middle">${sign}</text></g>`;
}
