/** The board as a strip: a column of holes at either edge, each with its printed name and its count. */
import type { PictureHeader, PictureHole, PictureModel } from './model';
import { slotHeight } from './part-figure';
import { shorten, type TextShape, widthOf } from './shapes';

export interface HoleFigure {
  readonly header: PictureHeader;
  readonly hole: PictureHole;
  readonly side: 'left' | 'right';
  /** Middle of the hole. */
  readonly y: number;
  readonly wires: number;
}

export interface BoardFigure {
  readonly width: number;
  readonly height: number;
  readonly holes: readonly HoleFigure[];
  readonly texts: readonly TextShape[];
  /** Columns of names and of counts, as distances from the edge of the hole's own side. */
  readonly nameAt: number;
  readonly countAt: number;
  readonly markAt: number;
}

const NAME = 10;
const COUNT = 8.5;
const TITLE = 12;
const SMALL = 8.5;

/** @param wiresAt how many wires a hole has, by its key. */
export function drawBoard(model: PictureModel, wiresAt: ReadonlyMap<string, number>): BoardFigure {
  const all = model.headers.flatMap(({ holes }) => holes);
  const nameWidth = Math.max(24, ...all.map(({ pin }) => widthOf(shorten(pin, 14), NAME)));
  const countWidth = widthOf('00', COUNT);
  const marks = all.some((hole) => hole.marks.length > 0) ? 18 : 0;
  const amps = all.some((hole) => hole.amps !== undefined) ? widthOf('-88.8 mA', COUNT) : 0;
  const nameAt = 14;
  const countAt = nameAt + nameWidth + 8 + countWidth;
  const markAt = countAt + 12;
  const column = countAt + 6 + marks + amps + 6;
  const headWords = model.headers.map(
    (header) => [shorten(header.title, 32), landmarkWords(header)] as const,
  );
  const headWidth = Math.max(0, ...headWords.flat().map((text) => widthOf(text, SMALL)));
  const width = 2 * Math.max(column, headWidth + 14) + 8;
  const texts: TextShape[] = [];
  let top = 8;
  for (const line of wrap(model.board, Math.floor((width - 16) / (TITLE * 0.62)))) {
    top += 15;
    texts.push({
      kind: 'text',
      at: { x: width / 2, y: top },
      text: line,
      size: TITLE,
      anchor: 'middle',
      role: 'name',
    });
  }
  const bottoms = { left: top + 4, right: top + 4 };
  const holes: HoleFigure[] = [];
  model.headers.forEach((header, index) => {
    const { side } = header;
    let y = bottoms[side] + 10;
    for (const text of headWords[index] ?? []) {
      if (text === '') continue;
      y += 10.5;
      const x = side === 'left' ? 8 : width - 8;
      texts.push({
        kind: 'text',
        at: { x, y },
        text,
        size: SMALL,
        anchor: side === 'left' ? 'start' : 'end',
        role: 'value',
      });
    }
    y += 6;
    for (const hole of header.holes) {
      const wires = wiresAt.get(holeKey(header.id, hole.index, hole.pin)) ?? 0;
      const height = slotHeight(wires);
      holes.push({ header, hole, side, y: y + height / 2, wires });
      y += height;
    }
    bottoms[side] = y;
  });
  return { width, height: Math.max(bottoms.left, bottoms.right) + 10, holes, texts, nameAt, countAt, markAt };
}

/** A hole's name among the ports; those without a position go by their pin. */
export function holeKey(header: string, index: number, pin: string): string {
  return index > 0 ? `${header}.${index}` : `.${pin}`;
}

function landmarkWords({ landmark }: PictureHeader): string {
  return landmark === '' ? '' : shorten(`1 = at ${landmark}`, 34);
}

function wrap(text: string, cells: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= cells)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(shorten(word, cells));
  }
  return lines.slice(0, 4);
}
