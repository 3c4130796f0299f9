// Part kinds are data that users write too: what a file says must hold together before a part is made of it.
import { describe, expect, test } from 'vitest';
import { type HardwareLibrary, readPartKind } from '../../../server/src/hardware';
import { describeProblems, filesOf, openLibrary, read } from './library';

const kind = `{
  "kind": "strip", "title": "lamp strip", "about": "Many lamps.",
  "terminals": [
    { "id": "+", "polarity": "+", "tell": "red" }, { "id": "-", "names": ["gnd"], "polarity": "-" },
    { "id": "in", "roles": ["data"], "when": { "driver": true } }, { "id": "coil", "when": { "mode": ["relay", "both"] } }
  ],
  "series": ["+", "-"],
  "parameters": {
    "count": { "type": "number", "default": 10, "about": "How many." },
    "size": { "type": "choice", "choices": ["small", "large"], "default": "small" },
    "mode": { "type": "choice", "choices": ["plain", "relay", "both"], "default": "plain" },
    "ohms": { "type": "quantity", "unit": "ohm" },
    "spread": { "type": "quantity", "unit": "ratio", "default": { "stock": "tolerance" } },
    "driver": { "type": "flag", "default": false },
    "label": { "type": "text" },
    "action": { "type": "choice", "choices": ["momentary", "latching"], "default": "latching" }
  },
  "inside": [
    { "type": "load", "id": "lamps", "ends": ["+", "-"],
      "amps": { "parameter": "count", "times": { "min": "1 mA", "typ": "20 mA", "max": "60 mA", "source": "sheet" } } },
    { "type": "resistor", "id": "feed", "ends": ["+", "~a"],
      "ohms": { "parameter": "ohms", "tolerance": { "parameter": "spread" }, "otherwise": { "by": "size", "table": { "small": "10", "large": { "typ": "1k", "max": "2k" } } } } },
    { "type": "logic-input", "id": "data", "ends": ["in", "-"], "ohms": "1M", "when": { "driver": true } },
    { "type": "coil", "id": "winding", "ends": ["coil", "-"], "ohms": "70", "when": { "mode": ["relay", "both"] } },
    { "type": "switch", "id": "contact", "ends": ["+", "~b"], "action": { "parameter": "action" }, "rest": "open",
      "operatedBy": "winding", "when": { "mode": ["relay", "both"] } }
  ],
  "sources": { "sheet": { "document": "Sheet" } }
}`;

function library(text = kind): HardwareLibrary {
  const { value, problems } = readPartKind('strip.json', text);
  if (value === undefined || problems.length > 0) throw new Error(describeProblems(text, problems));
  const open = openLibrary();
  return { ...open, partKinds: new Map([...open.partKinds, [value.kind, value]]) };
}

function part(entry: string) {
  const { build, codes } = read(
    `{ "board": "nano-v3", "parts": { "s": { "kind": "strip" ${entry} } } }`,
    library(),
  );
  return { ...build?.parts[0], codes };
}

describe('a part of a kind', () => {
  test('takes defaults, of the kind and of the stock', () => {
    const plain = part('');
    expect(plain.codes).toEqual([]);
    expect(plain.parameters).toEqual({
      count: '10',
      size: 'small',
      mode: 'plain',
      spread: '5 %',
      driver: 'false',
      action: 'latching',
    });
    expect(plain.terminals?.map((one) => one.id)).toEqual(['+', '-']);
    expect(plain.inside).toEqual([
      { type: 'load', id: 'lamps', ends: ['+', '-'], amps: { min: 0.01, typ: 0.2, max: 0.6 } },
      { type: 'resistor', id: 'feed', ends: ['+', '~a'], ohms: { min: 10, typ: 10, max: 10 } },
    ]);
  });

  test('takes what the manifest says', () => {
    const { codes, inside, terminals } = part(
      ', "count": 2, "ohms": "100", "spread": "10%", "driver": true, "mode": "relay", "action": "momentary", "label": "x"',
    );
    expect(codes).toEqual([]);
    expect(terminals?.map((one) => one.id)).toEqual(['+', '-', 'in', 'coil']);
    expect(inside).toMatchObject([
      { amps: { min: 0.002, typ: 0.04, max: 0.12 } },
      { ohms: { min: 90, typ: 100, max: 110 } },
      { type: 'logic-input' },
      { type: 'coil' },
      { type: 'switch', action: 'momentary', rest: 'open', operatedBy: 'winding' },
    ]);
    expect(part(', "size": "large"').inside).toMatchObject([
      {},
      { ohms: { min: 1000, typ: 1000, max: 2000 } },
    ]);
  });
});

describe('mistakes in a kind', () => {
  test.each([
    ['"series": ["+", "-"]', '"series": ["+", "out"]', 'unknown-terminal'],
    ['"ends": ["in", "-"]', '"ends": ["inn", "-"]', 'unknown-terminal'],
    ['{ "id": "in",', '{ "id": "+", "polarity": "+" }, { "id": "in",', 'double-id'],
    ['"id": "feed"', '"id": "lamps"', 'double-id'],
    ['"parameter": "ohms"', '"parameter": "omhs"', 'unknown-parameter'],
    ['"parameter": "ohms"', '"parameter": "label"', 'wrong-unit'],
    ['{ "parameter": "spread" }', '{ "parameter": "spred" }', 'unknown-parameter'],
    ['"by": "size"', '"by": "sise"', 'unknown-parameter'],
    ['"small": "10"', '"smal": "10"', 'unknown-word'],
    ['"small": "10", ', '', 'missing-row'],
    ['"driver": true } }, { "id": "coil"', '"drive": true } }, { "id": "coil"', 'unknown-parameter'],
    [
      '["relay", "both"] } },\n    { "type": "switch"',
      '["relai", "both"] } },\n    { "type": "switch"',
      'unknown-word',
    ],
    ['"operatedBy": "winding"', '"operatedBy": "windings"', 'unknown-coil'],
    ['"default": "small"', '"default": "tiny"', 'wrong-default'],
    ['"default": 10', '"default": "ten"', 'wrong-default'],
    ['"typ": "1k", "max": "2k"', '"typ": "1k", "source": "shet"', 'unknown-source'],
    ['"max": "60 mA", "source": "sheet"', '"max": "60 mW", "source": "sheet"', 'wrong-figure'],
    ['"max": "60 mA", "source": "sheet"', '"max": "60 mA", "source": "shet"', 'unknown-source'],
    ['"70"', '"70 V"', 'wrong-figure'],
    ['"typ": "1k", "max": "2k"', '"typ": "3k", "max": "2k"', 'wrong-figure'],
    ['"typ": "1k", "max": "2k"', '"when": "hot"', 'wrong-figure'],
    ['"type": "quantity", "unit": "ohm"', '"type": "quantity"', 'missing-unit'],
    ['"choices": ["small", "large"], ', '', 'missing-choices'],
    ['"rest": "open"', '"rest": "opened"', 'unknown-word'],
    ['"action": { "parameter": "action" }', '"action": { "parameter": "size" }', 'unknown-word'],
    ['"choices": ["momentary", "latching"], "default": "latching"', '"choices": ["momentary"]', undefined],
  ])('%s → %s', (from, to, code) => {
    expect(kind).toContain(from);
    const text = kind.replace(from, to);
    const { value, problems } = readPartKind('strip.json', text);
    expect(problems[0]?.code, describeProblems(text, problems)).toBe(code);
    if (code !== undefined) expect(value).toBeUndefined();
  });

  test('a key too many is told and does no harm', () => {
    const text = kind.replace('"about":', '"abuot":');
    const { value, problems } = readPartKind('strip.json', text);
    expect(problems).toMatchObject([{ code: 'unknown-key', hint: 'Did you mean "about"?' }]);
    expect(value?.kind).toBe('strip');
  });

  test('a key of another primitive is left out, whatever it holds', () => {
    const text = kind.replace('"ohms": "70"', '"ohms": "70", "amps": { "source": null }');
    const { value, problems } = readPartKind('strip.json', text);
    expect(problems.map((one) => one.code)).toEqual(['unknown-key']);
    expect(value?.inside[3]).not.toHaveProperty('amps');
  });

  test('a half-typed kind makes none', () => {
    const { value, problems } = readPartKind('strip.json', kind.slice(0, -1));
    expect(problems.map((one) => one.code)).toEqual(['syntax']);
    expect(value).toBeUndefined();
  });

  test('a figure of the wrong shape is told by the alternative that was meant', () => {
    const told = (figure: string) => {
      const text = kind.replace('"70"', figure);
      return readPartKind('strip.json', text).problems.map(({ code, span }) => [
        code,
        text.slice(span.start, span.end),
      ]);
    };
    expect(told('{ "typ": "70", "maxx": "80" }')).toEqual([['unknown-key', 'maxx']]);
    expect(told('{ "by": "size", "tabel": {} }')).toEqual([
      ['missing-key', 'ohms'],
      ['unknown-key', 'tabel'],
    ]);
    expect(told('{ "by": "size", "table": { "small": true, "large": "1" } }')).toEqual([
      ['wrong-type', 'true'],
    ]);
    expect(told('true')).toEqual([['wrong-type', 'true']]);
  });

  test.each(['', '[]', '7', '{}', '{ "kind": "x" }', '\0'])('%j is no kind', (text) => {
    const { value, problems } = readPartKind('x.json', text);
    expect(value).toBeUndefined();
    expect(problems.length).toBeGreaterThan(0);
  });
});

test('the part kinds of the library have no problem', () => {
  const files = filesOf('parts');
  expect(files.size).toBeGreaterThan(0);
  for (const [name, text] of files) {
    const { value, problems } = readPartKind(`${name}.json`, text);
    expect(describeProblems(text, problems), name).toBe('');
    expect(value?.kind).toBe(name);
  }
});
