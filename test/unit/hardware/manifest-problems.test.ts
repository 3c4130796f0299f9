// Mistakes in what a manifest says, and what is still read beside them.
import { describe, expect, test } from 'vitest';
import { read } from './library';
import { type Mistake, parts, testMistakes, withPart, withWires } from './mistakes';

const cases: readonly Mistake[] = [
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
  },
  {
    about: 'an end as near to several pins',
    text: withWires('{ "path": ["«D27»", "R1"] }'),
    code: 'unknown-end',
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

describe('a mistake is told once, at its place', () => testMistakes(cases));

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
