// Whatever layout a user has chosen, an edit must add or take away what it says and nothing else. The layouts are
// generated: indentation, line endings, comments in every place that allows one, trailing commas, one line or many.
import fc from 'fast-check';
import { parse } from 'jsonc-parser';
import { describe, expect, test } from 'vitest';
import { applyEdits, type Edit } from '../../../server/src/base/span';
import {
  composeEdits,
  insertItem,
  insertPart,
  insertWire,
  type JsonObject,
  removeKey,
  removePart,
  removeWire,
  renamePart,
  replaceValue,
} from '../../../server/src/hardware';
import { scanJson } from '../../../server/src/hardware/json/scan';

const file = 'hardware.jsonc';
const part: JsonObject = { kind: 'led', colour: 'green' };
const wire: JsonObject = { from: 'D7', to: 'new.anode' };

interface Style {
  readonly newline: string;
  readonly indent: string;
  readonly bom: boolean;
}

const style: fc.Arbitrary<Style> = fc.record({
  newline: fc.constantFrom('\n', '\r\n'),
  indent: fc.constantFrom('  ', '    ', '\t'),
  bom: fc.boolean(),
});

/** White space and comments between two tokens. `~` stands for a line break with the indentation of its depth. */
const lineGap = fc.constantFrom('~', '~', '~', '~~', ' ~', '~// own line\n~', '~/* own\n   lines */~');
const remark = fc.constantFrom('', '', '', ' // remark\n', '  /* remark */', ' /* a */ /* b */');
const inlineGap = fc.constantFrom('', ' ', '  ', ' /* in line */ ');

interface EntryStyle {
  readonly front: string;
  readonly behind: string;
  readonly beforeComma: string;
}

const manyLines: fc.Arbitrary<EntryStyle> = fc.record({
  front: lineGap,
  behind: remark,
  beforeComma: fc.constantFrom('', '', '', ' ', ' /* before comma */'),
});
const oneLine: fc.Arbitrary<EntryStyle> = fc.record({
  front: inlineGap,
  behind: fc.constant(''),
  beforeComma: fc.constant(''),
});

/** A container with its entries given as texts. */
function container(open: string, close: string, entries: readonly string[]): fc.Arbitrary<string> {
  const layout = (entry: fc.Arbitrary<EntryStyle>, last: fc.Arbitrary<string>) =>
    fc.record({
      styles: fc.array(entry, { minLength: entries.length, maxLength: entries.length }),
      trailing: fc.boolean(),
      openRemark: remark,
      last,
    });
  const emptyOnes = fc.constantFrom(
    '',
    ' ',
    ' /* none */ ',
    '/* none */',
    '~// none yet\n^',
    ' // none\n~// yet\n^',
  );
  if (entries.length === 0) return emptyOnes.map((inside) => `${open}${inside}${close}`);
  const print = (
    {
      styles,
      trailing,
      openRemark,
      last,
    }: { styles: EntryStyle[]; trailing: boolean; openRemark: string; last: string },
    lines: boolean,
  ) => {
    const texts = entries.map((entry, index) => {
      const { front = '', behind = '', beforeComma = '' } = styles[index] ?? {};
      const comma = index < entries.length - 1 || trailing ? `${beforeComma},` : '';
      return `${front}${entry}${comma}${behind}`;
    });
    return `${open}${lines ? openRemark : ''}${texts.join('')}${last}${close}`;
  };
  return fc.oneof(
    layout(manyLines, fc.constantFrom('^', '^', '~// the end\n^', '')).map((all) => print(all, true)),
    layout(oneLine, inlineGap).map((all) => print(all, false)),
  );
}

/** Puts in the line breaks and the indentation. A line comment always gets its line break. */
function dress(text: string, { newline, indent, bom }: Style): string {
  let depth = 0;
  let result = '';
  for (const line of text.replace(/\n[~^]/g, (mark) => mark.slice(1)).split(/(?=[~^\n{}[\]])/)) {
    const mark = line[0];
    if (mark === '{' || mark === '[') depth += 1;
    if (mark === '}' || mark === ']') depth -= 1;
    if (mark === '~') result += `\n${indent.repeat(depth)}${line.slice(1)}`;
    else if (mark === '^') result += `\n${indent.repeat(depth - 1)}${line.slice(1)}`;
    else result += line;
  }
  return (bom ? '\uFEFF' : '') + result.replaceAll('\n', newline);
}

const partEntries = [
  '"R1":  { "kind": "resistor", "value": "470" }',
  '"beacon": {~"kind": "led", // green\n~"colour": "green"^}',
  '"restart": { "kind": "push-button" }',
];
const wireEntries = [
  '{ "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] }',
  '{~"from": "RST",~"to": "restart.1" /* white */^}',
  '{ "from": "restart.2", "to": "GND" }',
];

const some = (all: readonly string[]) => fc.nat(all.length).map((count) => all.slice(0, count));
const manifest: fc.Arbitrary<string> = fc
  .tuple(some(partEntries), some(wireEntries))
  .chain(([parts, wires]) => fc.tuple(container('{', '}', parts), container('[', ']', wires)))
  .chain(([parts, wires]) =>
    fc.tuple(
      container('{', '}', ['"board": "nano-v3"', `"parts": ${parts}`, `"wires": ${wires}`]),
      fc.constantFrom('', '// head\n', '/* head */\n'),
      fc.constantFrom('', '\n', '\n// tail\n'),
      style,
    ),
  )
  .map(([body, head, tail, how]) => dress(`${head}${body}${tail}`, how));

function plainValueOf(text: string): { parts: Record<string, unknown>; wires: unknown[] } {
  const errors: never[] = [];
  const value = parse(text.replace(/^\uFEFF/, ''), errors, { allowTrailingComma: true });
  expect(errors, text).toEqual([]);
  // Without the null prototypes, so that values compare.
  return JSON.parse(JSON.stringify(value));
}

function commentsOf(text: string): string[] {
  return scanJson(text).flatMap((token) =>
    token.kind.endsWith('comment') ? [text.slice(token.start, token.end).trimEnd()] : [],
  );
}

function checkLineEndings(text: string, before: string) {
  if (before.includes('\r\n')) expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  else expect(text).not.toContain('\r');
}

function apply(text: string, edits: readonly Edit[]): string {
  expect(edits.length, text).toBeGreaterThan(0);
  return applyEdits(text, edits);
}

function isSubsequence(part: string, whole: string): boolean {
  let at = 0;
  for (const character of part) {
    at = whole.indexOf(character, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

const runs = { numRuns: 300 };

describe('insertion', () => {
  test('adds a part and keeps everything else', () => {
    fc.assert(
      fc.property(manifest, (text) => {
        const after = apply(text, insertPart(text, 'new', part, file));
        const old = plainValueOf(text);
        expect(plainValueOf(after)).toEqual({ ...old, parts: { ...old.parts, new: part } });
        expect(commentsOf(after)).toEqual(commentsOf(text));
        checkLineEndings(after, text);
        expect(applyEdits(after, removePart(after, 'new', file))).toBe(text);
      }),
      runs,
    );
  });

  test('adds a wire and keeps everything else', () => {
    fc.assert(
      fc.property(manifest, (text) => {
        const after = apply(text, insertWire(text, wire, file));
        const old = plainValueOf(text);
        expect(plainValueOf(after)).toEqual({ ...old, wires: [...old.wires, wire] });
        expect(commentsOf(after)).toEqual(commentsOf(text));
        checkLineEndings(after, text);
        expect(applyEdits(after, removeWire(after, old.wires.length, file))).toBe(text);
      }),
      runs,
    );
  });

  test('puts a wire between others', () => {
    fc.assert(
      fc.property(manifest, fc.nat(3), (text, place) => {
        const old = plainValueOf(text);
        const index = Math.min(place, old.wires.length);
        const after = apply(text, insertItem(text, ['wires'], index, wire, file));
        expect(plainValueOf(after)).toEqual({ ...old, wires: old.wires.toSpliced(index, 0, wire) });
        expect(commentsOf(after)).toEqual(commentsOf(text));
        checkLineEndings(after, text);
        expect(applyEdits(after, removeWire(after, index, file))).toBe(text);
      }),
      runs,
    );
  });

  test('makes a missing section', () => {
    fc.assert(
      fc.property(manifest, fc.constantFrom('parts', 'wires'), (text, section) => {
        const bare = applyEdits(text, removeKey(text, [section], file));
        const old = plainValueOf(bare);
        const edits =
          section === 'parts' ? insertPart(bare, 'new', part, file) : insertWire(bare, wire, file);
        const after = apply(bare, edits);
        expect(plainValueOf(after)).toEqual({
          ...old,
          [section]: section === 'parts' ? { new: part } : [wire],
        });
        expect(commentsOf(after)).toEqual(commentsOf(bare));
        checkLineEndings(after, bare);
      }),
      runs,
    );
  });
});

describe('removal', () => {
  test('takes out one entry and loses no comment that stands on a line of its own', () => {
    fc.assert(
      fc.property(manifest, fc.nat(2), fc.boolean(), (text, place, ofParts) => {
        const old = plainValueOf(text);
        const ids = Object.keys(old.parts);
        const id = ids[place];
        if (ofParts ? id === undefined : place >= old.wires.length) return;
        const after = apply(text, ofParts ? removePart(text, id ?? '', file) : removeWire(text, place, file));
        const wanted = ofParts
          ? { ...old, parts: Object.fromEntries(Object.entries(old.parts).filter(([key]) => key !== id)) }
          : { ...old, wires: old.wires.toSpliced(place, 1) };
        expect(plainValueOf(after)).toEqual(wanted);
        checkLineEndings(after, text);
        const own = (comments: string[]) =>
          comments.filter((one) => /own|none|yet|the end|head|tail/.test(one));
        expect(own(commentsOf(after))).toEqual(own(commentsOf(text)));
        // What is left is a part of what was there, in order: nothing is moved or re-printed.
        expect(isSubsequence(after, text)).toBe(true);
      }),
      runs,
    );
  });
});

describe('replacement', () => {
  test('changes one value and no byte outside of it', () => {
    fc.assert(
      fc.property(manifest, (text) => {
        const edits = replaceValue(text, ['board'], 'uno-r3', file);
        expect(edits).toHaveLength(1);
        expect(applyEdits(text, edits)).toBe(text.replace('"nano-v3"', '"uno-r3"'));
        const added = apply(text, replaceValue(text, ['title'], 'Beacon', file));
        expect(plainValueOf(added)).toEqual({ ...plainValueOf(text), title: 'Beacon' });
        expect(applyEdits(added, removeKey(added, ['title'], file))).toBe(text);
      }),
      runs,
    );
  });

  test('renames a part everywhere and back again', () => {
    fc.assert(
      fc.property(manifest, (text) => {
        const edits = renamePart(text, 'R1', 'R9', file);
        const after = applyEdits(text, edits);
        expect(after).toBe(edits.length === 0 ? text : text.replaceAll('"R1"', '"R9"'));
        expect(applyEdits(after, renamePart(after, 'R9', 'R1', file))).toBe(text);
      }),
      runs,
    );
  });
});

test('composed edits do what the steps do one after the other', () => {
  fc.assert(
    fc.property(manifest, fc.nat(2), (text, place) => {
      const steps = [
        (now: string) => insertPart(now, 'new', part, file),
        (now: string) => removeWire(now, place, file),
        (now: string) => insertWire(now, wire, file),
        (now: string) => replaceValue(now, ['parts', 'new', 'colour'], 'red', file),
        (now: string) => removeKey(now, ['parts', 'R1'], file),
      ];
      const oneByOne = steps.reduce((now, step) => applyEdits(now, step(now)), text);
      expect(applyEdits(text, composeEdits(text, file, ...steps))).toBe(oneByOne);
    }),
    runs,
  );
});
