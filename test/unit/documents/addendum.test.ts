/**
 * Old plus addendum is new. Somebody who has the old hookup list and the printed addendum, and nothing else, gets the
 * new hookup list out of them; over a thousand random edits of random manifests.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { openLibrary } from '../../../server/src/analysis';
import type { Build, End, Part, Wire } from '../../../server/src/base/build';
import { addendumPaper, type PaperInput, writeMarkdown } from '../../../server/src/documents';
import { type WireRow, wireRow } from '../../../server/src/documents/addendum-rows';
import { partWords } from '../../../server/src/documents/part-words';
import { loadLibrary } from '../../../server/src/files';
import { readManifest } from '../../../server/src/hardware';
import { root } from '../../fixture/bench';
import { readHarbour } from './harbour';
import { applyEdits, randomBuild, randomEdits, writeManifest } from './random-builds';
import { type Row, readTables } from './read-page';

const { hardware } = openLibrary(loadLibrary(`${root}/hardware-schemas`), () => undefined);

function buildOf(manifest: string): Build {
  const { value } = readManifest('hardware.jsonc', manifest, hardware);
  if (!value) throw new Error('no build');
  return value;
}

/** Without figures: what is tested again has its own tests. */
function inputOf(build: Build): PaperInput {
  const workings = { regions: [], pins: [], placed: [], rails: {}, ground: '0' };
  return { build, workings, findings: [], sources: [] };
}

function printed(before: Build, after: Build): string {
  return writeMarkdown(addendumPaper(inputOf(before), inputOf(after)));
}

const keys = ['colour', 'gauge', 'length', 'strip', 'note'] as const;

/** A row as one text, whichever end is named first. */
function rowKey({ from, to, ...rest }: WireRow): string {
  return JSON.stringify([[from, to].sort(), ...keys.map((key) => rest[key])]);
}

/** Does what a hand would do, row by row; a row that does not fit what is there throws. */
function doAddendum(before: Build, page: string): WireRow[] {
  const tables = readTables(page);
  const rows = (title: string): Row[] => tables.get(title) ?? [];
  const names = new Map(rows('New names').map((row) => [row.called ?? '', row['is now called'] ?? '']));
  let wires = before.wires.map((wire) => wireRow(before, wire, (id) => names.get(id) ?? id));
  const take = (fits: (wire: WireRow) => boolean): WireRow => {
    const found = wires.find(fits);
    if (!found) throw new Error(`no such wire; there are ${JSON.stringify(wires)}`);
    wires = wires.filter((wire) => wire !== found);
    return found;
  };
  const wireOf = (row: Row): WireRow => ({
    from: row.from ?? '',
    to: row.to ?? '',
    colour: row.colour ?? '',
    gauge: row.gauge ?? '',
    length: row.length ?? '',
    strip: row.strip ?? '',
    note: row.note ?? '',
  });
  for (const row of rows('Take these wires away')) {
    const key = rowKey(wireOf(row));
    take((wire) => rowKey(wire) === key);
  }
  const changed = ['Move these wires', 'Replace these wires', 'Words only']
    .flatMap(rows)
    .filter((row) => row.from);
  // All are taken up before any is put down, since one may go where another still is.
  const lifted = changed.map((row) => {
    const was = take((wire) => fitsRow(wire, row));
    return applyHow(was, row['what to do'] ?? '');
  });
  return [...wires, ...lifted, ...rows('Add these wires').map(wireOf)];
}

/** The wire as the row says it is found, whichever end is named first. */
function fitsRow(wire: WireRow, row: Row): boolean {
  const looks = (['colour', 'gauge', 'length', 'note'] as const).every(
    (key) => row[key] === undefined || row[key] === wire[key],
  );
  return looks && [wire.from, wire.to].sort().join() === [row.from, row.to].sort().join();
}

interface Step {
  readonly key?: (typeof keys)[number];
  readonly was: string;
  readonly is: string;
}

function stepsOf(how: string): Step[] {
  return how.split('; ').map((step): Step => {
    const [, leave, reach] = /^unsolder it at (.*), solder it to (.*)$/.exec(step) ?? [];
    if (leave !== undefined && reach !== undefined) return { was: leave, is: reach };
    const key = keys.find((each) => step.startsWith(`${each} `));
    if (!key) throw new Error(`cannot be read: ${step}`);
    const words = step.slice(key.length + 1);
    const [, gone] = /^no longer (.*)$/.exec(words) ?? [];
    if (gone !== undefined) return { key, was: gone, is: '' };
    const [, is, was] = /^(.*) instead of (.*)$/.exec(words) ?? [];
    return { key, was: was ?? '', is: is ?? words };
  });
}

function applyHow(wire: WireRow, how: string): WireRow {
  const row: { -readonly [Key in keyof WireRow]: string } = { ...wire };
  for (const { key, was, is } of stepsOf(how)) {
    if (key) row[key] = is;
    else if (row.from === was) row.from = is;
    else if (row.to === was) row.to = is;
    else throw new Error(`it has no end at ${was}`);
  }
  return row;
}

/** The end as the new manifest demands it: a named hole to the letter, any other by its pin alone. */
function demanded(end: End): End {
  if (end.kind === 'terminal' || end.position?.declared) return end;
  return { kind: 'pin', pin: end.pin, span: end.span };
}

function endFits(words: string, end: End): boolean {
  if (end.kind === 'terminal') return words === `${end.part}.${end.terminal}`;
  if (end.position?.declared) return words === end.position.words;
  return words.split(/, | \(/)[0] === end.pin;
}

/** Every wire of the new manifest is there, and none besides. The strictest demands choose first. */
function expectBuild(rows: readonly WireRow[], after: Build): void {
  const left = [...rows];
  const strict = (wire: Wire) =>
    wire.ends.filter((end) => end.kind === 'pin' && end.position?.declared).length;
  for (const wire of [...after.wires].sort((a, b) => strict(b) - strict(a))) {
    const look = wireRow(after, { ...wire, ends: [demanded(wire.ends[0]), demanded(wire.ends[1])] });
    const index = left.findIndex(
      (row) =>
        keys.every((key) => row[key] === look[key]) &&
        [
          [row.from, row.to],
          [row.to, row.from],
        ].some(([a = '', b = '']) => endFits(a, wire.ends[0]) && endFits(b, wire.ends[1])),
    );
    if (index < 0) throw new Error(`${JSON.stringify(look)} is missing in ${JSON.stringify(left)}`);
    left.splice(index, 1);
  }
  expect(left).toEqual([]);
}

/** No pin has its wires in fewer holes than the manifest gives them: none are crowded together without need. */
function expectHolesApart(rows: readonly WireRow[], after: Build): void {
  const count = (all: readonly WireRow[]) => {
    const holes = new Set(all.flatMap(({ from, to }) => [from, to]).filter((end) => end.includes(' from ')));
    const pins = [...holes].map((words) => words.split(', ')[0] ?? '');
    return new Map(pins.map((pin) => [pin, pins.filter((other) => other === pin).length]));
  };
  const given = count(after.wires.map((wire) => wireRow(after, wire)));
  const built = count(rows);
  for (const [pin, holes] of given) expect(built.get(pin)).toBe(holes);
}

interface PartRow {
  what: string;
  purpose: string;
  mount: string;
}

function partRow(part: Part): PartRow {
  return { what: partWords(part), purpose: part.purpose ?? '', mount: part.mount ?? '' };
}

function partsAfter(before: Build, page: string): Map<string, PartRow> {
  const tables = readTables(page);
  const rows = (title: string): Row[] => tables.get(title) ?? [];
  const names = new Map(rows('New names').map((row) => [row.called ?? '', row['is now called'] ?? '']));
  const parts = new Map(before.parts.map((part) => [names.get(part.id) ?? part.id, partRow(part)]));
  const known = (name: string | undefined): PartRow => {
    const part = parts.get(name ?? '');
    if (!part) throw new Error(`there is no part ${name}`);
    return part;
  };
  for (const row of rows('Take these parts out')) {
    expect(known(row.name).what).toBe(row.what);
    parts.delete(row.name ?? '');
  }
  for (const row of rows('Exchange these parts')) {
    expect(known(row.name).what).toBe(row['take out']);
    known(row.name).what = row['put in'] ?? '';
  }
  for (const row of rows('Words only').filter(({ part }) => part !== undefined)) {
    const [, key = '', words = ''] = /^(purpose|mount): (.*)$/.exec(row.now ?? '') ?? [];
    if (key !== 'purpose' && key !== 'mount') throw new Error(`cannot be read: ${row.now}`);
    known(row.part)[key] = words.startsWith('no longer ') ? '' : words.replace(/ instead of .*$/, '');
  }
  for (const row of rows('Put these parts in')) {
    expect(parts.has(row.name ?? '')).toBe(false);
    parts.set(row.name ?? '', { what: row.what ?? '', purpose: row.for ?? '', mount: row.mounting ?? '' });
  }
  return parts;
}

it('gives the new build to somebody who has the old one and the page, over 1,000 random edits', () => {
  let compared = 0;
  fc.assert(
    fc.property(randomBuild, randomEdits, (start, edits) => {
      const before = buildOf(writeManifest(start));
      const after = buildOf(writeManifest(applyEdits(start, edits)));
      const page = printed(before, after);
      const rows = doAddendum(before, page);
      expectBuild(rows, after);
      expectHolesApart(rows, after);
      expect(partsAfter(before, page)).toEqual(new Map(after.parts.map((part) => [part.id, partRow(part)])));
      compared += after.wires.length;
    }),
    { numRuns: 1000 },
  );
  expect(compared).toBeGreaterThan(5000);
});

describe('the harbour model', () => {
  let input: { before: PaperInput; after: PaperInput };
  beforeAll(async () => {
    input = await readHarbour();
  });

  it('says nothing where nothing changed', () => {
    const page = writeMarkdown(addendumPaper(input.after, input.after));
    expect([...page.matchAll(/^## (.*)$/gm)].map((match) => match[1])).toEqual(['Nothing changed']);
  });

  it('sees a rename as a rename, with no wire touched and nothing tested again', () => {
    const manifest = JSON.stringify(input.after.build);
    const renamed = JSON.parse(manifest.replaceAll('"beacon"', '"beam"')) as Build;
    const after = { ...input.after, build: renamed };
    const page = writeMarkdown(addendumPaper({ ...input.after, sources: [] }, { ...after, sources: [] }));
    expect(readTables(page).get('New names')).toEqual([
      { done: '☐', called: 'beacon', 'is now called': 'beam' },
    ]);
    expect(page).not.toMatch(/## (Take|Put|Add|Move|Replace|Exchange)/);
  });

  it('leaves a wire in its hole though the manifest now counts another one', () => {
    const { build } = input.after;
    const early = buildOf(
      JSON.stringify({
        board: 'nano-v3',
        parts: { B: { kind: 'push-button' } },
        wires: [{ from: 'GND', to: 'B.1' }],
      }),
    );
    const late = buildOf(
      JSON.stringify({
        board: 'nano-v3',
        parts: { B: { kind: 'push-button' } },
        wires: [
          { from: 'GND', to: 'B.2' },
          { from: 'GND', to: 'B.1' },
        ],
      }),
    );
    expect(build.board.id).toBe(late.board.id);
    const tables = readTables(printed(early, late));
    expect([...tables.keys()]).toEqual(['Add these wires', 'Test again']);
    const [first, second] = [early.wires[0]?.ends[0], late.wires[1]?.ends[0]];
    if (first?.kind !== 'pin' || second?.kind !== 'pin') throw new Error('no pins');
    expect(first.position?.words).not.toBe(second.position?.words);
    expect(tables.get('Add these wires')?.[0]?.from).toBe(second.position?.words);
  });
});
