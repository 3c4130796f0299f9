// No reader and no edit throws, whatever the text, and every span lies in its text.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../server/src/base/span';
import {
  insertIntoPath,
  insertPart,
  insertWire,
  manifestPathAt,
  nearestName,
  readBoard,
  readPartKind,
  removePart,
  removeWire,
  renamePart,
} from '../../../server/src/hardware';
import { filesOf, read } from './library';

const manifest = `{
  "format": 1, "title": "x", "board": "nano-v3", // the board
  "stock": { "resistors": ["220", "4k7"], "tolerance": "5%", "power": "0.25 W" },
  "policy": { "pinCurrent": "recommended" },
  "parts": { "beacon": { "kind": "led", "colour": "green" }, "R1": { "kind": "resistor", "value": "470" } },
  "wires": [{ "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] },
    { "from": "RST", "to": "R1.1", "length": "20 cm" }],
  "severity": { "idle-wire": "off" }
}`;

const bits = [
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  '//',
  '/*',
  '*/',
  '\\',
  '\n',
  '\r',
  '\uFEFF',
  '\0',
  'null',
  '1e999',
];
const values = [
  'null',
  'true',
  '-1',
  '"@"',
  '"."',
  '"GND@"',
  '"GND@left."',
  '".1"',
  '[]',
  '{}',
  '"__proto__"',
  '{"min": 1}',
];

/** The text with some runs of it deleted, doubled or replaced. */
function mutated(text: string): fc.Arbitrary<string> {
  const literals = [...text.matchAll(/"[^"]*"|\d+|true|false/g)];
  const change = fc.oneof(
    fc.tuple(fc.nat(text.length), fc.nat(12), fc.constantFrom('', ...bits)),
    fc.tuple(fc.constantFrom(...literals), fc.constantFrom(...values)).map(([literal, value]) => {
      return [literal.index, literal[0].length, value] as [number, number, string];
    }),
  );
  return fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => {
    const ordered = changes.toSorted(([a], [b]) => b - a);
    return ordered.reduce((now, [at, length, put]) => now.slice(0, at) + put + now.slice(at + length), text);
  });
}

function checkSpans(text: string, problems: ReturnType<typeof read>['problems']) {
  for (const { span, fix, message } of problems) {
    expect(message).toMatch(/[.]$/);
    expect(span.start).toBeLessThanOrEqual(span.end);
    expect(span.start).toBeGreaterThanOrEqual(0);
    expect(span.end).toBeLessThanOrEqual(text.length);
    if (fix !== undefined) applyEdits(text, fix.edits);
  }
}

describe('readers', () => {
  test('a manifest', () => {
    fc.assert(
      fc.property(fc.oneof(mutated(manifest), fc.string({ unit: 'binary' }), fc.json()), (text) => {
        const { build, problems } = read(text);
        checkSpans(
          text,
          problems.filter((one) => one.span.file === 'hardware.jsonc'),
        );
        expect(JSON.parse(JSON.stringify({ build }))).toEqual(build === undefined ? {} : { build });
        manifestPathAt(text, Math.floor(text.length / 2));
      }),
      { numRuns: 10000 },
    );
  });

  test('a board', () => {
    const text = filesOf('boards').get('nano-v3') ?? '';
    fc.assert(
      fc.property(mutated(text), (changed) => {
        checkSpans(changed, readBoard({ file: 'b.json', text: changed }, () => undefined).problems);
      }),
      { numRuns: 10000 },
    );
  });

  test('a part kind', () => {
    for (const text of filesOf('parts').values()) {
      fc.assert(
        fc.property(mutated(text), (changed) =>
          checkSpans(changed, readPartKind('p.json', changed).problems),
        ),
        { numRuns: 10000 },
      );
    }
  });
});

test('edits', () => {
  fc.assert(
    fc.property(fc.oneof(mutated(manifest), fc.json()), fc.nat(3), (text, index) => {
      const all = [
        insertPart(text, 'new', { kind: 'led' }, 'f'),
        insertWire(text, { from: 'a', to: 'b' }, 'f'),
        insertIntoPath(text, index, index, 'new', 'f'),
        removePart(text, 'R1', 'f'),
        removeWire(text, index, 'f'),
        renamePart(text, 'R1', 'R2', 'f'),
      ];
      for (const edits of all) {
        const after = applyEdits(text, edits);
        // What was well formed stays well formed.
        const syntax = (codes: readonly string[]) => codes.includes('syntax');
        if (edits.length > 0) expect(syntax(read(after).codes), after).toBe(syntax(read(text).codes));
      }
    }),
    { numRuns: 10000 },
  );
});

describe('the nearest name', () => {
  test('is found for a slip of one letter in any place', () => {
    const names = ['beacon', 'restart', 'horn', 'potentiometer'];
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.nat(20), fc.constantFrom('x', ''), (name, place, put) => {
        const at = place % name.length;
        expect(nearestName(name.slice(0, at) + put + name.slice(at + 1), names)).toBe(name);
      }),
    );
  });

  test('is none where nothing is like it, and quick on long names', () => {
    expect(nearestName('zzzzzz', ['beacon', 'R1'])).toBeUndefined();
    expect(nearestName('', ['a'])).toBeUndefined();
    expect(nearestName('x'.repeat(1e6), ['x'.repeat(1e6)])).toBeUndefined();
    expect(nearestName('GDN', ['GND', '5V'])).toBe('GND');
  });
});
