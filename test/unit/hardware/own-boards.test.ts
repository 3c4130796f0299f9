// Boards of one's own that stand on a board of the library: what they take over, and what a mistake in one says.
import { describe, expect, test } from 'vitest';
import type { Problem } from '../../../server/src/base/read';
import { type BoardSource, type FindBoard, readBoard } from '../../../server/src/hardware';
import { filesOf } from './library';

const texts = filesOf('boards');
const ids = [...texts.keys()];
const avr = [
  ...['bare-32u4-3v3', 'leonardo', 'mega-2560', 'micro'],
  ...['nano-v3', 'pro-mini-3v3', 'pro-mini-5v', 'uno-r3'],
];

/** Reads boards of one's own by file name, with the library behind them. */
function open(files: Readonly<Record<string, object | string>>, first = 'own.json') {
  const sources = new Map<string, BoardSource>();
  for (const [file, content] of Object.entries(files)) {
    sources.set(file, { file, text: typeof content === 'string' ? content : JSON.stringify(content) });
  }
  const find: FindBoard = (name) => {
    const text = texts.get(name);
    return text === undefined ? sources.get(name) : { file: `boards/${name}.json`, text };
  };
  const source = sources.get(first);
  if (source === undefined) throw new Error(`no file ${first}`);
  const { value, problems } = readBoard(source, find, ids);
  return { board: value, problems, marked: problems.map((one) => marked(one, sources)) };
}

/** Code, the marked text and the way out, in one line. */
function marked({ code, span, hint = '' }: Problem, sources: ReadonlyMap<string, BoardSource>): string {
  const text = sources.get(span.file)?.text.slice(span.start, span.end) ?? '?';
  return `${span.file} ${code} <${text}> ${hint}`;
}

describe.each(avr)('a board that extends %s', (base) => {
  const plain = { id: 'own', extends: base, title: 'My own' };

  test('has all that its base has, under its own name', () => {
    const own = open({ 'own.json': plain });
    const library = open({ 'own.json': texts.get(base) ?? '' });
    expect(own.marked).toEqual([]);
    expect(own.board).toEqual({ ...library.board, id: 'own', title: 'My own' });
  });

  test('may say another lamp, limit, header and supply, and keeps the rest', () => {
    const own = open({
      'own.json': {
        ...plain,
        headers: { edge: { title: 'edge', landmark: 'the notch', positions: ['GND', 'D2', 'D3'] } },
        limits: { pinRecommended: { max: '5 mA', source: 'mine' } },
        supplyInputs: {
          pack: { title: 'battery leads', volts: { min: '4 V', max: '6 V', source: 'mine' } },
        },
        onBoard: {
          signal: {
            title: 'signal lamp on D2',
            inside: [{ type: 'resistor', id: 'r', ends: ['D2', 'GND'], ohms: '1 kohm' }],
            lamp: { pin: 'D2', litBy: 'high', direct: true },
            source: 'mine',
          },
        },
        pins: { D2: { takenBy: { what: 'lamp', free: true, why: 'the signal lamp', source: 'mine' } } },
        sources: { mine: { document: 'My own plan' } },
      },
    });
    expect(own.marked).toEqual([]);
    const { board } = own;
    expect(board?.headers.at(-1)).toMatchObject({ id: 'edge', positions: ['GND', 'D2', 'D3'] });
    expect(board?.limits.pinRecommended).toMatchObject({ max: 0.005, source: 'My own plan' });
    expect(board?.limits.pinAbsolute.max).toBe(0.04);
    expect(board?.supplyInputs?.find(({ id }) => id === 'pack')).toMatchObject({ volts: { min: 4, max: 6 } });
    expect(board?.onBoard.at(-1)?.lamp).toEqual({ pin: 'D2', litBy: 'high', direct: true });
    expect(board?.pins.find(({ id }) => id === 'D2')?.takenBy).toMatchObject({ what: 'lamp', free: true });
  });

  test('a wrong pin is marked where it stands, with the nearest right one', () => {
    const { marked: told, problems } = open({
      'own.json': { ...plain, headers: { edge: { title: 'e', landmark: 'l', positions: ['GND', 'DD2'] } } },
    });
    expect(told).toEqual([expect.stringMatching(/^own\.json unknown-pin <DD2> Did you mean "D2"\?$/)]);
    expect(problems[0]?.fix?.edits[0]?.text).toBe('D2');
  });

  test('a wrong pin is marked in a lamp and a supply as well', () => {
    const { marked: told } = open({
      'own.json': {
        ...plain,
        onBoard: {
          signal: {
            title: 's',
            inside: [{ type: 'resistor', id: 'r', ends: ['D2', 'GND'], ohms: '1 kohm' }],
            lamp: { pin: 'DD3', litBy: 'low' },
            fromMemory: true,
          },
        },
        supplyInputs: { pack: { title: 'p', pin: 'PACK_PLUS', volts: { max: '5 V', fromMemory: true } } },
      },
    });
    expect(told).toEqual([
      'own.json unknown-pin <DD3> Did you mean "D3"?',
      expect.stringMatching(/^own\.json unknown-pin <PACK_PLUS> Right names: D0, /),
    ]);
  });

  test('a slip in the name of the base is told with the right name', () => {
    const slip = `${base.slice(0, 2)}${base.slice(3)}`;
    const { board, marked: told, problems } = open({ 'own.json': { ...plain, extends: slip } });
    expect(board).toBeUndefined();
    expect(told).toEqual([`own.json unknown-board <${slip}> Did you mean "${base}"?`]);
    expect(problems[0]?.fix?.edits[0]?.text).toBe(base);
  });

  test('a circle is marked at the link that closes it, with the way round', () => {
    const { board, marked: told } = open({
      'own.json': { ...plain, extends: 'middle.json' },
      'middle.json': { id: 'middle', extends: 'last.json' },
      'last.json': { id: 'last', extends: 'own.json' },
    });
    expect(board).toBeUndefined();
    expect(told).toEqual([
      'last.json circular-extends <own.json> The way round: own.json, middle.json and last.json. ' +
        'Let the last of them extend a library board, or nothing.',
    ]);
  });
});

test('a base that is like nothing in the library is told with what there is', () => {
  const { marked: told } = open({ 'own.json': { id: 'own', extends: 'zzzzzzzzzzzzzzz' } });
  expect(told).toEqual([
    expect.stringMatching(/^own\.json unknown-board <zzzzzzzzzzzzzzz> Right names: bare-32u4-3v3, /),
  ]);
});

test('a base looked for without a library is told with what may stand there', () => {
  const { problems } = readBoard({ file: 'a.json', text: '{"id":"a","extends":"b"}' }, () => undefined);
  expect(problems[0]?.hint).toBe(
    'Write the id of a library board, or the path of a board file beside this one.',
  );
});

test('a board that extends itself is told so', () => {
  const { marked: told } = open({ 'own.json': { id: 'own', extends: 'own.json' } });
  expect(told).toEqual([
    expect.stringMatching(/^own\.json circular-extends <own\.json> It extends itself\./),
  ]);
});

test('a header that is written again stands where the last file has it', () => {
  const { board } = open({
    'own.json': {
      id: 'own',
      extends: 'nano-v3',
      headers: {
        first: { title: 'f', landmark: 'l', positions: ['D2'] },
        left: { title: 'left', landmark: 'l', positions: ['GND'] },
      },
    },
  });
  expect(board?.headers.map(({ id }) => id)).toEqual(['right', 'first', 'left']);
});

describe('mistakes in the fields that only some boards have', () => {
  const withPin = (d2: object) => open({ 'own.json': { id: 'own', extends: 'nano-v3', pins: { D2: d2 } } });

  test.each([
    [{ boot: { level: 'hgh', why: 'x', fromMemory: true } }, 'unknown-word'],
    [{ boot: { level: 'high', why: 'x' } }, 'missing-key'],
    [{ takenBy: { what: 'flash' } }, 'missing-key'],
    [{ takenBy: { what: 'flsh', why: 'x', fromMemory: true } }, 'unknown-word'],
    [{ pulls: ['upp'] }, 'unknown-word'],
    [{ inputOnly: 'yes' }, 'wrong-type'],
    [{ maxInputVolts: { max: '5 A', fromMemory: true } }, 'wrong-figure'],
    [{ adcBlockedBy: 'wifi' }, 'unknown-word'],
  ])('%j', (pin, code) => {
    const { problems } = withPin(pin);
    expect(problems.map((one) => one.code)).toContain(code);
    expect(problems.every(({ span }) => span.file === 'own.json' && span.end > span.start)).toBe(true);
  });

  test('right ones are read, and null takes them away again', () => {
    const source = { fromMemory: true };
    const middle = {
      id: 'middle',
      extends: 'nano-v3',
      pins: {
        D2: {
          boot: { level: 'high', why: 'else the loader starts', must: false, ...source },
          takenBy: { what: 'flash', why: 'feeds the flash memory', ...source },
          inputOnly: true,
          pulls: [],
          adcUnit: 2,
          adcBlockedBy: 'radio',
          recommendedAmps: { max: '2 mA', ...source },
          maxInputVolts: { max: '3.6 V', ...source },
        },
      },
      limits: { driveStrengths: { 7: { title: 'OUTPUT_12MA', amps: { max: '12 mA', ...source } } } },
    };
    const { board, marked: told } = open({ 'own.json': middle });
    expect(told).toEqual([]);
    expect(board?.pins.find(({ id }) => id === 'D2')).toMatchObject({
      boot: { level: 'high', must: false, source: 'from memory' },
      takenBy: { what: 'flash', free: false },
      inputOnly: true,
      pulls: [],
      adcUnit: 2,
      adcBlockedBy: 'radio',
      recommendedAmps: { max: 0.002 },
      maxInputVolts: { max: 3.6 },
    });
    expect(board?.limits.driveStrengths).toMatchObject([
      { mode: 7, title: 'OUTPUT_12MA', amps: { max: 0.012 } },
    ]);
    const cleared = open({
      'middle.json': middle,
      'own.json': { id: 'own', extends: 'middle.json', pins: { D2: { boot: null, takenBy: null } } },
    });
    expect(cleared.marked).toEqual([]);
    const pin = cleared.board?.pins.find(({ id }) => id === 'D2');
    expect([pin?.boot, pin?.takenBy, pin?.inputOnly]).toEqual([undefined, undefined, true]);
  });
});
