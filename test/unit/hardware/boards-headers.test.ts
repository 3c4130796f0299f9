// The boards that are not AVR against the headers of their open cores and the tables of their makers' guides.
import { describe, expect, test } from 'vitest';
import type { Board } from '../../../server/src/base/build';
import { type BoardFacts, mismatches, readFacts } from './board-facts';
import { describeProblems, filesOf, openLibrary } from './library';

const ids = [
  'uno-r4-minima',
  'zero',
  'nodemcu-esp8266',
  'esp32-devkitc',
  'esp32-s3-devkitc',
  'esp32-c3-devkitm',
  'pico',
  'pico-w',
  'nucleo-f103rb',
  'teensy-4-0',
];

const library = openLibrary();
const texts = filesOf('boards');

function boardOf(id: string): Board {
  const read = library.board(id, 'hardware.jsonc');
  if (read?.value === undefined) throw new Error(`no board ${id}`);
  return read.value;
}

/** The facts with one value changed, as a typo on either side would change it. */
function spoilt(facts: BoardFacts, change: Partial<BoardFacts>): BoardFacts {
  return { ...facts, ...change };
}

describe.each(ids)('board %s', (id) => {
  const facts = readFacts(id);

  test('is read without a problem', () => {
    const read = library.board(id, 'hardware.jsonc');
    expect(describeProblems(texts.get(id) ?? '', read?.problems ?? [])).toBe('');
    expect(read?.value?.id).toBe(id);
  });

  test('agrees with the headers of its core', () => {
    expect(facts.sources.length).toBeGreaterThan(0);
    for (const { commit } of facts.sources) expect(commit).toMatch(/^[0-9a-f]{40}$/);
    expect(Object.keys(facts.constants).length).toBeGreaterThan(20);
    expect(mismatches(boardOf(id), facts)).toEqual([]);
  });

  test('a wrong constant is told', () => {
    const [name, value] = Object.entries(facts.constants)[0] ?? ['', 0];
    const wrong = spoilt(facts, { constants: { ...facts.constants, [name]: value + 1 } });
    expect(mismatches(boardOf(id), wrong)).toContain(`constant ${name}: ${value}, header ${value + 1}`);
  });
});

describe('a typo in a board', () => {
  const withPins = ids.filter((id) => readFacts(id).pins !== undefined);
  const withHeaders = ids.filter((id) => readFacts(id).headers !== undefined);

  test('is looked for in every table that a header gives', () => {
    expect(ids.filter((id) => !withPins.includes(id))).toEqual(['pico', 'pico-w']);
    expect(ids.filter((id) => !withHeaders.includes(id))).toEqual(['zero', 'nucleo-f103rb']);
  });

  test.each(withPins)('%s: a wrong entry of any table is told', (id) => {
    const facts = readFacts(id);
    for (const field of facts.tells ?? []) {
      const index = facts.pins?.findIndex((row) => row[field] !== undefined) ?? -1;
      const pins = facts.pins?.map((row, place) => (place === index ? { ...row, [field]: undefined } : row));
      const told = mismatches(boardOf(id), spoilt(facts, { pins: pins ?? [] }));
      expect({ field, told: told.length }).toEqual({ field, told: 1 });
      expect(told[0]).toContain(` ${field}: `);
    }
  });

  test.each(withHeaders)('%s: two swapped positions are told', (id) => {
    const facts = readFacts(id);
    for (const [header, printed] of Object.entries(facts.headers ?? {})) {
      const at = printed.findIndex((name, index) => index > 0 && name !== printed[index - 1]);
      const swapped = [...printed];
      [swapped[at - 1], swapped[at]] = [printed[at] ?? '', printed[at - 1] ?? ''];
      const told = mismatches(
        boardOf(id),
        spoilt(facts, { headers: { ...facts.headers, [header]: swapped } }),
      );
      expect(told).toHaveLength(2);
    }
  });
});
