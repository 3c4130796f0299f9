// Every mistake in a manifest is told once, at its place, with the way out. The place is marked by « and ».
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../server/src/base/span';
import { describeProblems, read } from './library';

interface Case {
  readonly about: string;
  /** The manifest with one marked place. */
  readonly text: string;
  readonly code: string;
  /** The marked text after the fix; left out where there is none. */
  readonly fixed?: string;
}

const parts = `"parts": {
  "beacon": { "kind": "led", "colour": "green" },
  "R1": { "kind": "resistor", "value": "470" },
  "restart": { "kind": "push-button" },
  "dial": { "kind": "potentiometer", "value": "10k" }
}`;

function withWires(wires: string): string {
  return `{ "board": "nano-v3", ${parts}, "wires": [${wires}] }`;
}

function withPart(part: string): string {
  return `{ "board": "nano-v3", "parts": { ${part} } }`;
}

const cases: readonly Case[] = [
  // Syntax.
  { about: 'a comma is missing', text: '{ "title": "x" «"board"»: "nano-v3" }', code: 'syntax' },
  { about: 'a word without quotes', text: '{ "board": «nano-v3» }', code: 'syntax' },
  { about: 'text behind the end', text: '{ "board": "nano-v3" } «7»', code: 'syntax' },
  { about: 'a key twice', text: '{ "board": "nano-v3", "«board»": "uno-r3" }', code: 'double-key' },
  {
    about: 'a part twice',
    text: withPart('"R1": { "kind": "resistor", "value": 1 }, "«R1»": { "kind": "led" }'),
    code: 'double-key',
  },
  // Shape.
  { about: 'the file is a list', text: '«["board"]»', code: 'wrong-type' },
  {
    about: 'an unknown key',
    text: '{ "board": "nano-v3", "«revison»": "B" }',
    code: 'unknown-key',
    fixed: 'revision',
  },
  { about: 'a key like nothing', text: '{ "board": "nano-v3", "«zzzzzzzzzz»": 1 }', code: 'unknown-key' },
  { about: 'no board', text: '«{» "title": "x" }', code: 'missing-key' },
  {
    about: 'a number for text',
    text: '{ "board": "nano-v3", "revision": «2» }',
    code: 'wrong-type',
    fixed: '"2"',
  },
  { about: 'text for a list', text: '{ "board": "nano-v3", "wires": "«D7»" }', code: 'wrong-type' },
  { about: 'a list for parts', text: '{ "board": "nano-v3", "parts": «[]» }', code: 'wrong-type' },
  {
    about: 'an unknown severity',
    text: '{ "board": "nano-v3", "severity": { "idle-wire": "«warn»" } }',
    code: 'unknown-word',
  },
  {
    about: 'a mistyped severity',
    text: '{ "board": "nano-v3", "severity": { "idle-wire": "«warnig»" } }',
    code: 'unknown-word',
    fixed: 'warning',
  },
  {
    about: 'an unknown key of a path',
    text: withWires('{ "path": ["D7", "R1"], "«colors»": [] }'),
    code: 'unknown-key',
    fixed: 'colours',
  },
  {
    about: 'an unknown key of a wire',
    text: withWires('{ "from": "D7", "to": "R1.1", "«color»": "red" }'),
    code: 'unknown-key',
    fixed: 'colour',
  },
  { about: 'a wire with one end', text: withWires('«{» "from": "D7" }'), code: 'missing-key' },
  { about: 'a path of one', text: withWires('{ "path": «["D7"]» }'), code: 'wrong-value' },
  {
    about: 'a pin as a number',
    text: withWires('{ "path": [«7», "R1"] }'),
    code: 'wrong-type',
    fixed: '"7"',
  },
  { about: 'an entry that is no wire', text: withWires('"«D7»"'), code: 'wrong-type' },
  { about: 'a part without a kind', text: withPart('"«R1»": {}'), code: 'missing-key' },
  { about: 'a part that is text', text: withPart('"R1": "«resistor»"'), code: 'wrong-type' },
  {
    about: 'a nested value in a part',
    text: withPart('"L1": { "kind": "led", "colour": «["red"]» }'),
    code: 'wrong-type',
  },
  { about: 'a newer format', text: '{ "format": «2», "board": "nano-v3" }', code: 'newer-format' },
  { about: 'a format that is none', text: '{ "format": «0», "board": "nano-v3" }', code: 'wrong-value' },
  // Stock and policy.
  {
    about: 'a resistor that is none',
    text: '{ "board": "nano-v3", "stock": { "resistors": ["330", "«red»"] } }',
    code: 'wrong-figure',
  },
  {
    about: 'a series that is none',
    text: '{ "board": "nano-v3", "stock": { "resistors": "«E13»" } }',
    code: 'unknown-word',
    fixed: 'E3',
  },
  {
    about: 'a tolerance without per cent',
    text: '{ "board": "nano-v3", "stock": { "tolerance": "«5»" } }',
    code: 'wrong-figure',
  },
  {
    about: 'a power in volts',
    text: '{ "board": "nano-v3", "stock": { "power": "«5 V»" } }',
    code: 'wrong-figure',
  },
  {
    about: 'a mistyped policy',
    text: '{ "board": "nano-v3", "policy": { "pinCurrent": "«recomended»" } }',
    code: 'unknown-word',
    fixed: 'recommended',
  },
  {
    about: 'a policy of nothing',
    text: '{ "board": "nano-v3", "policy": { "pinCurrent": «0» } }',
    code: 'wrong-figure',
  },
  // Board.
  { about: 'an unknown board', text: '{ "board": "«nanov3»" }', code: 'unknown-board', fixed: 'nano-v3' },
  { about: 'a board file that is not there', text: '{ "board": "«./mine.json»" }', code: 'unknown-board' },
  // Parts.
  {
    about: 'an unknown kind',
    text: withPart('"R1": { "kind": "«resistr»" }'),
    code: 'unknown-kind',
    fixed: 'resistor',
  },
  {
    about: 'an unknown parameter',
    text: withPart('"L1": { "kind": "led", "«color»": "red" }'),
    code: 'unknown-key',
    fixed: 'colour',
  },
  {
    about: 'a colour that is none',
    text: withPart('"L1": { "kind": "led", "colour": "«gren»" }'),
    code: 'unknown-word',
    fixed: 'green',
  },
  {
    about: 'a value that is none',
    text: withPart('"R1": { "kind": "resistor", "value": "«4x7»" }'),
    code: 'wrong-figure',
  },
  {
    about: 'a negative value',
    text: withPart('"R1": { "kind": "resistor", "value": «-5» }'),
    code: 'wrong-figure',
  },
  { about: 'a value that is missing', text: withPart('"«R1»": { "kind": "resistor" }'), code: 'missing-key' },
  {
    about: 'a flag as text',
    text: withPart('"C1": { "kind": "capacitor", "value": "1u", "polarised": "«yes»" }'),
    code: 'wrong-figure',
  },
  {
    about: 'a name no wire can write',
    text: withPart('"«my lamp»": { "kind": "led" }'),
    code: 'wrong-part-name',
  },
  { about: 'a name with a dot', text: withPart('"«lamp.1»": { "kind": "led" }'), code: 'wrong-part-name' },
  { about: 'a part named like a pin', text: withPart('"«D7»": { "kind": "led" }'), code: 'part-hides-pin' },
  {
    about: 'a part named like a number of a pin',
    text: withPart('"«7»": { "kind": "led" }'),
    code: 'part-hides-pin',
  },
  // Ends.
  {
    about: 'an unknown part',
    text: withWires('{ "from": "D7", "to": "«restert».1" }'),
    code: 'unknown-part',
    fixed: 'restart',
  },
  {
    about: 'an unknown terminal',
    text: withWires('{ "from": "D7", "to": "beacon.«anod»" }'),
    code: 'unknown-terminal',
    fixed: 'anode',
  },
  {
    about: 'a terminal like nothing',
    text: withWires('{ "from": "D7", "to": "restart.«x»" }'),
    code: 'unknown-terminal',
    fixed: '1',
  },
  {
    about: 'an unknown end',
    text: withWires('{ "path": ["«D77»", "R1"] }'),
    code: 'unknown-end',
    fixed: 'D7',
  },
  {
    about: 'an unknown pin at a position',
    text: withWires('{ "from": "«GDN»@left.14", "to": "restart.1" }'),
    code: 'unknown-pin',
    fixed: 'GND',
  },
  {
    about: 'another pin at that position',
    text: withWires('{ "from": "GND@«left.13»", "to": "restart.1" }'),
    code: 'unknown-position',
    fixed: 'left.14',
  },
  {
    about: 'a position beyond the end',
    text: withWires('{ "from": "GND@«left.99»", "to": "restart.1" }'),
    code: 'unknown-position',
    fixed: 'left.14',
  },
  {
    about: 'an unknown header',
    text: withWires('{ "from": "GND@«lift.14»", "to": "restart.1" }'),
    code: 'unknown-position',
    fixed: 'left.14',
  },
  {
    about: 'a wire to a whole part',
    text: withWires('{ "from": "D7", "to": "«restart»" }'),
    code: 'no-terminal',
  },
  {
    about: 'a path through three terminals',
    text: withWires('{ "path": ["D7", "«dial»", "GND"] }'),
    code: 'no-way-through',
  },
  {
    about: 'a wire to itself',
    text: withWires('{ "from": "restart.1", "to": "«restart.1»" }'),
    code: 'wire-to-itself',
  },
  {
    about: 'a wire to itself by two names',
    text: withWires('{ "from": "D7", "to": "«7»" }'),
    code: 'wire-to-itself',
  },
  {
    about: 'a path that comes back',
    text: withWires('{ "path": ["D7", "R1", "beacon", "«R1»"] }'),
    code: 'end-twice',
  },
  {
    about: 'a colour too few',
    text: withWires('{ "path": ["D7", "R1", "GND"], "colours": «["red"]» }'),
    code: 'wrong-count',
  },
  {
    about: 'a length too many',
    text: withWires('{ "path": ["D7", "R1.1"], "lengths": «["1 cm", "2 cm"]» }'),
    code: 'wrong-count',
  },
  {
    about: 'a length that is none',
    text: withWires('{ "from": "D7", "to": "R1.1", "length": "«20 kg»" }'),
    code: 'wrong-figure',
  },
];

describe('a mistake is told once, at its place', () => {
  for (const { about, text: marked, code, fixed } of cases) {
    test(about, () => {
      const start = marked.indexOf('«');
      const end = marked.indexOf('»') - 1;
      expect(end).toBeGreaterThanOrEqual(start);
      const text = marked.replace('«', '').replace('»', '');
      const { problems } = read(text);
      expect(
        problems.map((one) => one.code),
        describeProblems(text, problems),
      ).toEqual([code]);
      const [problem] = problems;
      expect(problem?.span).toEqual({ file: 'hardware.jsonc', start, end });
      expect(problem?.message).toMatch(/^[A-Z"].*\.$/);
      const after = problem?.fix && applyEdits(text, problem.fix.edits);
      expect(after).toBe(fixed === undefined ? undefined : marked.replace(/«.*»/s, fixed));
    });
  }
});

describe('what is right beside a mistake still counts', () => {
  test('a wire with a bad end is left out, the others stay', () => {
    const { build } = read(withWires('{ "from": "D7", "to": "R1.3" }, { "path": ["D8", "beacon", "GND"] }'));
    expect(build?.wires.map((wire) => wire.id)).toEqual(['w2.1', 'w2.2']);
    expect(build?.parts.map((part) => part.id)).toEqual(['beacon', 'R1', 'restart', 'dial']);
  });

  test('a wire to a part of unknown kind is no second mistake', () => {
    const { build, codes } = read(
      `{ "board": "nano-v3", "parts": { "x": { "kind": "warp-coil" } }, "wires": [{ "from": "D7", "to": "x.1" }] }`,
    );
    expect(codes).toEqual(['unknown-kind']);
    expect(build?.wires).toEqual([]);
  });

  test('with an unknown board everything else is still checked', () => {
    const { build, codes } = read(
      `{ "board": "?", ${parts}, "wires": [{ "from": "anything", "to": "R1.9" }, { "from": "D7", "to": "GND@a.1" }] }`,
    );
    expect(build).toBeUndefined();
    expect(codes).toEqual(['unknown-board', 'unknown-terminal']);
  });

  test('wrong colours and lengths do not take the wire away', () => {
    const { build } = read(
      withWires('{ "path": ["D7", "R1", "GND"], "colours": ["red"], "lengths": ["10 cm", "x"] }'),
    );
    expect(build?.wires.map(({ colour, length }) => ({ colour, length }))).toEqual([
      { colour: 'red', length: 0.1 },
      { colour: undefined, length: undefined },
    ]);
  });

  test('a part with a wrong figure keeps its terminals and has nothing inside', () => {
    const { build } = read(withPart('"R1": { "kind": "resistor", "value": "?" }'));
    expect(build?.parts[0]?.terminals.map((one) => one.id)).toEqual(['1', '2']);
    expect(build?.parts[0]?.inside).toEqual([]);
  });

  test('the first of two equal keys counts', () => {
    const { build } = read('{ "board": "nano-v3", "board": "uno-r3" }');
    expect(build?.board.id).toBe('nano-v3');
  });
});

describe('text that is no manifest', () => {
  const codes = (text: string) => read(text).codes;

  test('says so in one problem', () => {
    expect(codes('')).toEqual(['empty-file']);
    expect(codes('  \r\n // soon\n')).toEqual(['empty-file']);
    expect(codes('\uFEFF')).toEqual(['empty-file']);
    expect(codes('PK\u0003\u0004\0\0')).toEqual(['not-text']);
    expect(codes('[')).toEqual(['syntax', 'wrong-type']);
    expect(codes('7')).toEqual(['wrong-type']);
    expect(codes('['.repeat(100_000))).toEqual(['nested-too-deep']);
    expect(codes('{"a":'.repeat(100_000))).toEqual(['nested-too-deep']);
  });

  test('a byte order mark moves no offset', () => {
    const text = '\uFEFF{ "board": "nano-v4" }';
    const { problems } = read(text);
    expect(text.slice(problems[0]?.span.start, problems[0]?.span.end)).toBe('nano-v4');
    expect(read('\uFEFF{ "board": "nano-v3" }').codes).toEqual([]);
  });

  test('a key like __proto__ is a key like any other', () => {
    const { build, codes } = read(
      `{ "board": "nano-v3", "__proto__": { "title": "x" },
        "parts": { "__proto__": { "kind": "resistor", "value": "1k" }, "constructor": { "kind": "led", "toString": 1 } },
        "wires": [{ "from": "D7", "to": "__proto__.1" }, { "from": "D8", "to": "constructor.anode" }] }`,
    );
    expect(codes).toEqual(['unknown-key', 'unknown-key']);
    expect(build?.title).toBe('Untitled build');
    expect(build?.parts.map((part) => part.id)).toEqual(['__proto__', 'constructor']);
    expect(build?.wires).toHaveLength(2);
    expect(Object.prototype).not.toHaveProperty('kind');
  });
});
