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
import { manifest } from './manifest-layouts';

const file = 'hardware.jsonc';
const part: JsonObject = { kind: 'led', colour: 'green' };
const wire: JsonObject = { from: 'D7', to: 'new.anode' };

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
