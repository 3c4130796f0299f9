/**
 * The generated pages and drawings of the boards: everything the board says is on them, nothing is drawn outside the
 * paper or over something else, and the same files make the same bytes.
 */
import { describe, expect, it } from 'vitest';
import { countStates, missingOf, statementsOf } from '../../fixture/board-figures';
import { openBoardLibrary } from '../../fixture/board-library';
import { drawBoard } from '../../fixture/board-map';
import { makeBoardPages } from '../../fixture/board-pages';

const library = openBoardLibrary();
const pages = makeBoardPages();
const boards = [...library.values()].flatMap(({ id, board, merged }) =>
  board ? [{ id, board, merged }] : [],
);

interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly middle: number;
}

/** Boxes of all texts of a drawing; a fixed-width face is six tenths of its height wide. */
function textBoxes(svg: string): readonly Box[] {
  const found = svg.matchAll(
    /<text class="([^"]*)" x="(-?\d+(?:\.\d+)?)" y="(\d+(?:\.\d+)?)"(?: text-anchor="(\w+)")?>([^<]*)<\/text>/g,
  );
  return [...found].map(([, kind = '', x = '', y = '', anchor, text = '']) => {
    const font = kind.includes('title') ? 20 : kind.includes('big') ? 13 : 11;
    const plain = text.replaceAll(/&\w+;/g, '&');
    const width = plain.length * font * 0.602;
    const left = Number(x) - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
    return { text: plain, left, right: left + width, middle: Number(y) };
  });
}

describe.each(boards)('the drawing of $id', ({ id, board }) => {
  const svg = drawBoard(board);

  it('is the same twice, and the one among the pages', () => {
    expect(drawBoard(board)).toBe(svg);
    expect(pages.get(`server/docs/boards/${id}.svg`)).toBe(svg);
  });

  it('has a hole and a count for every position of every header', () => {
    const positions = board.headers.flatMap((header) => header.positions);
    expect(svg.match(/<circle class="hole/g)?.length).toBe(positions.length + 5);
    const texts = textBoxes(svg).map(({ text }) => text);
    for (const pin of positions) expect(texts).toContain(pin);
    for (const { title, landmark } of board.headers) {
      expect(texts).toContain(`${title}, counted from ${landmark}`);
    }
  });

  it('keeps every text on the paper and off its neighbours', () => {
    const [, width = '0', height = '0'] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? [];
    const boxes = textBoxes(svg);
    expect(boxes.length).toBeGreaterThan(40);
    const outside = boxes.filter(
      ({ left, right, middle }) => left < 0 || right > Number(width) || middle > Number(height) || middle < 0,
    );
    expect(outside).toEqual([]);
    const overlaps = boxes.flatMap((one, index) =>
      boxes
        .slice(index + 1)
        .filter(({ middle }) => Math.abs(middle - one.middle) < 10)
        .filter(({ left, right }) => left < one.right - 0.5 && one.left < right - 0.5)
        .map((other) => `${one.text} / ${other.text}`),
    );
    expect(overlaps).toEqual([]);
  });

  it('is well formed', () => {
    const open = svg.match(/<(svg|style|title|text)\b/g)?.length;
    expect(svg.match(/<\/(svg|style|title|text)>/g)?.length).toBe(open);
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});

describe.each(boards)('the page of $id', ({ id, board, merged }) => {
  const page = pages.get(`server/docs/boards/${id}.md`) ?? '';

  it('shows the drawing, every pin with its places, and every limit', () => {
    expect(page).toContain(`![Pin map of the ${board.title}](${id}.svg)`);
    for (const pin of board.pins) expect(page).toContain(`| **${pin.id}** |`);
    for (const group of board.limits.groups) expect(page).toContain(`| ${group.title} |`);
    expect(page).toContain('| working current of a pin |');
    expect(page).not.toMatch(/\bNaN\b|undefined/);
  });

  it('names a document for every number that stands for one', () => {
    const used = [...page.matchAll(/\[(\d+)\](?!\()/g)].map(([, number]) => Number(number));
    const listed = [...page.matchAll(/^(\d+)\. /gm)].map(([, number]) => Number(number));
    expect(listed).toEqual(listed.map((_, index) => index + 1));
    expect(used.filter((number) => !listed.includes(number))).toEqual([]);
  });

  it('says how much was looked up and what is missing', () => {
    const counts = countStates(merged);
    expect(page).toContain(`${counts.sourced} figures were looked up`);
    for (const what of missingOf(merged)) expect(page).toContain(what);
    expect(counts.sourced + counts['partly from memory'] + counts['from memory']).toBe(
      statementsOf(merged).length,
    );
  });
});

describe('what is asked of a board', () => {
  const uno = structuredClone(library.get('uno-r3')?.merged ?? { id: '' });

  it('is all there for the UNO', () => expect(missingOf(uno)).toEqual([]));

  it.each<[string, () => object]>([
    ['limits.total', () => ({ ...uno, limits: { ...uno.limits, total: null } })],
    ['limits.groups', () => ({ ...uno, limits: { ...uno.limits, groups: {} } })],
    [
      'output levels at a current, high and low',
      () => ({ ...uno, limits: { ...uno.limits, outputLevels: [] } }),
    ],
    ['supply inputs', () => ({ ...uno, supplyInputs: {} })],
    ['analog.bits', () => ({ ...uno, analog: { ...uno.analog, bits: null } })],
    ['built-in lamp', () => ({ ...uno, onBoard: {} })],
    ['boot straps', () => ({ ...uno, chip: 'ESP32' })],
    ['the pins of i2c.sda', () => ({ ...uno, pins: { ...uno.pins, A4: null } })],
    ['a pin with a PWM timer', () => ({ ...uno, pins: {} })],
  ])('%s is missed where it is not', (what, change) => {
    expect(missingOf(change() as typeof uno)).toContain(what);
  });

  it('a figure is told by who looked it up', () => {
    const figures = {
      a: { max: '1 A', source: 'x', where: 'Table 1' },
      b: { max: '1 A', source: 'x', where: 'max: Table 1; typ from memory' },
      c: { max: '1 A', fromMemory: true },
    };
    const states = statementsOf({ id: 'x', limits: figures } as unknown as typeof uno);
    expect(states.map(({ state }) => state)).toEqual(['sourced', 'partly from memory', 'from memory']);
  });
});
