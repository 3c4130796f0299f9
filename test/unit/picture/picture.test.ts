/** The picture of the wiring: kept files, what lies on what, how still it keeps, and words that stay words. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { drawPicture } from '../../../server/src/picture';
import { type Layout, layOut } from '../../../server/src/picture/layout';
import { openTestBench, root, type TestBench } from '../../fixture/bench';
import { audit } from './audit';
import { manifest as buildOfTitle, builds, modelOf, wide } from './builds';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

const names = Object.keys(builds);
const kept = `${root}/test/fixture/picture`;
const buildOf = (parts: object, wires: readonly object[]) => buildOfTitle('One', 'nano-v3', parts, wires);
const modelNamed = (name: string) => modelOf(bench, builds[name] ?? {});

describe('kept pictures', () => {
  it.each(names)('%s is drawn as it was', async (name) => {
    const svg = await drawPicture(modelNamed(name));
    const file = `${kept}/${name}.svg`;
    if (process.env.UPDATE === '1') {
      mkdirSync(kept, { recursive: true });
      writeFileSync(file, svg);
    }
    expect(existsSync(file), `${file} is missing: UPDATE=1 writes it`).toBe(true);
    expect(svg).toBe(readFileSync(file, 'utf8'));
  });

  it('gives the same bytes for the same model, also after a round trip through JSON', async () => {
    const model = modelNamed('harbour-faulty');
    expect(JSON.parse(JSON.stringify(model))).toEqual(model);
    expect(await drawPicture(JSON.parse(JSON.stringify(model)))).toBe(await drawPicture(model));
  });
});

/** Crossings of the kept builds. Fewer are welcome: lower the figure. */
const mostCrossings: Readonly<Record<string, number>> = {
  'harbour-model': 10,
  'harbour-faulty': 16,
  capstan: 8,
  'signal-mast': 25,
  'hostile-names': 1,
};

describe('what lies on what', () => {
  it.each(names)('%s: no label on a symbol or another label, no wire through a part', async (name) => {
    const layout = await layOut(modelNamed(name));
    const { overlaps, through, shared, crossings } = audit(layout);
    expect(overlaps).toEqual([]);
    expect(through).toEqual([]);
    expect(shared).toEqual([]);
    expect(layout.wires.length).toBe(layout.model.wires.length);
    expect(crossings).toBeLessThanOrEqual(mostCrossings[name] ?? 0);
  });

  it('is noticed where it is made', async () => {
    const layout = await layOut(modelNamed('harbour-model'));
    const [first, ...others] = layout.parts;
    const [second] = others;
    if (!first || !second) throw new Error('two parts are needed');
    const [name] = second.texts;
    if (!name) throw new Error('a name is needed');
    // The second part's name is put on the first part's symbol, and the first wire through the board.
    const middle = { x: first.box.x + first.box.width / 2, y: first.box.y + first.box.height / 2 };
    const moved: Layout = {
      ...layout,
      parts: [first, { ...second, texts: [{ ...name, at: middle }] }, ...others.slice(1)],
      wires: layout.wires.map((wire, index) =>
        index > 0
          ? wire
          : {
              ...wire,
              points: [
                { x: -20, y: 50 },
                { x: layout.board.width + 20, y: 50 },
              ],
            },
      ),
    };
    const found = audit(moved);
    expect(found.overlaps).not.toEqual([]);
    expect(found.through).toContain(`${moved.wires[0]?.wire.id} through board`);
  });
});

const kinds = readdirSync(`${root}/hardware-schemas/parts`).map((file) => file.replace(/\.json$/, ''));

describe('every kind of part of the library', () => {
  it.each(kinds)(
    '%s is drawn with all its terminals, wired to pins, to another part and to itself',
    async (kind) => {
      const loose = modelOf(bench, buildOf({ thing: { kind } }, []));
      const terminals = loose.parts[0]?.terminals.map(({ id }) => id) ?? [];
      expect(terminals).not.toEqual([]);
      const pins = ['D2', '5V', 'D3', 'GND', 'A0', 'D4'];
      const outward = terminals.map((id, index) => ({ from: pins[index % pins.length], to: `thing.${id}` }));
      const chained = terminals
        .slice(1)
        .map((id, index) => ({ from: `thing.${terminals[index]}`, to: `thing.${id}` }));
      const others = terminals.map((id, index) => ({
        from: `lamp.${index % 2 ? 'anode' : 'cathode'}`,
        to: `thing.${id}`,
      }));
      for (const wires of [chained, [...outward, ...others]]) {
        const layout = await layOut(
          modelOf(bench, buildOf({ thing: { kind }, lamp: { kind: 'led' } }, wires)),
        );
        const { overlaps, through, shared } = audit(layout);
        expect([overlaps, through, shared]).toEqual([[], [], []]);
        expect(layout.wires.length).toBe(wires.length);
        const thing = layout.parts.find(({ part }) => part.id === 'thing');
        expect(thing?.terminals.map(({ terminal }) => terminal).sort()).toEqual([...terminals].sort());
      }
    },
  );
});

describe('every thing that can be pointed at', () => {
  it.each(names)('%s: parts, wires and holes carry their names and places', async (name) => {
    const model = modelNamed(name);
    const svg = await drawPicture(model);
    const count = (text: string) => svg.split(text).length - 1;
    expect(count(' data-part="')).toBe(model.parts.length);
    expect(count(' data-wire="')).toBe(model.wires.length);
    expect(count(' data-pin="')).toBe(model.headers.reduce((sum, { holes }) => sum + holes.length, 0));
    expect(count(' data-span="')).toBeGreaterThanOrEqual(model.parts.length + model.wires.length);
  });

  it('shows each finding of the faulty harbour once, with its message', async () => {
    const model = modelNamed('harbour-faulty');
    const findings = bench.analyse(builds['harbour-faulty'] ?? {}).findings;
    const told = [
      ...model.marks,
      ...model.parts.flatMap(({ marks }) => marks),
      ...model.wires.flatMap(({ marks }) => marks),
      ...model.headers.flatMap(({ holes }) => holes.flatMap(({ marks }) => marks)),
    ];
    expect(told.map(({ message }) => message).sort()).toEqual(findings.map(({ message }) => message).sort());
    expect(told.length - model.marks.length).toBeGreaterThan(10);
    const svg = await drawPicture(model);
    const shown = [...svg.matchAll(/data-rules="([^"]*)"/g)].flatMap(([, rules = '']) => rules.split(' '));
    expect(shown.length).toBe(told.length - model.marks.length);
  });
});

describe('words of the user', () => {
  it('are words in every file: no script, link, style, handler or foreign picture comes of them', async () => {
    const svg = await drawPicture(modelNamed('hostile-names'));
    const tags = new Set([...svg.matchAll(/<\/?([a-zA-Z!?][\w:-]*)/g)].map(([, tag]) => tag));
    expect([...tags].sort()).toEqual([
      'circle',
      'desc',
      'g',
      'path',
      'rect',
      'style',
      'svg',
      'text',
      'title',
    ]);
    const outside = svg.replace(/<style>[^<]*<\/style>/, '');
    const attributes = new Set([...outside.matchAll(/\s([a-zA-Z][\w:-]*)="/g)].map(([, name]) => name));
    expect(
      [...attributes].filter((name) => name !== undefined && /^(on|href|xlink|style|src)/i.test(name)),
    ).toEqual([]);
    expect(svg.split('<style>').length).toBe(2);
    // The user's colours never reach a stroke: only our own paints do.
    const strokes = [...svg.matchAll(/ stroke="([^"]*)"/g)].map(([, paint]) => paint ?? '');
    expect(strokes.filter((paint) => !/^#[0-9a-f]{6}$/.test(paint))).toEqual([]);
    // XML 1.0, section 2.2, tells which signs a file may hold.
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there.
    expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/u);
    expect(svg).toContain('&lt;script&gt;x&lt;/script&gt;');
  });
});

describe('size and change', () => {
  it('puts every wire of builds with 10, 100 and 500 wires in place', async () => {
    for (const wires of [10, 100, 500]) {
      const model = modelOf(bench, wide(wires));
      const start = performance.now();
      const layout = await layOut(model);
      const took = performance.now() - start;
      const drawn = layout.wires.length;
      const { crossings, overlaps, through } = audit(layout);
      console.log(`${model.wires.length} wires: ${took.toFixed(0)} ms, ${crossings} crossings`);
      expect(drawn).toBe(model.wires.length);
      expect([overlaps, through]).toEqual([[], []]);
    }
  }, 60_000);

  it('leaves most parts near their places where one wire is added to the harbour model', async () => {
    const files = builds['harbour-model'] ?? {};
    const before = await layOut(modelOf(bench, files));
    const figures: string[] = [];
    for (const [from, to] of added) {
      const wire = JSON.stringify({ from, to });
      const text = (files['hardware.jsonc'] ?? '').replace(/\n {2}\]\n\}\s*$/, `,\n${wire}\n]\n}`);
      const model = modelOf(bench, { ...files, 'hardware.jsonc': text });
      expect(model.wires.length).toBe(before.model.wires.length + 1);
      const shifts = shiftsOf(before, await layOut(model)).sort((p, q) => p - q);
      const median = shifts[Math.floor(shifts.length / 2)] ?? 0;
      figures.push(`${from} to ${to}: median ${median.toFixed(0)} px, most ${shifts.at(-1)?.toFixed(0)} px`);
      // The picture is about 870 pixels wide: no jump across it.
      expect(median).toBeLessThan(185);
    }
    console.log(figures.join('\n'));
  });
});

const added = [
  ['A3', 'tide.wiper'],
  ['D2', 'beacon.anode'],
  ['beacon.cathode', 'gate.-'],
  ['D12', 'restart.1'],
] as const;

function shiftsOf(before: Layout, after: Layout): number[] {
  const now = new Map(after.parts.map(({ part, box }) => [part.id, box] as const));
  return before.parts.flatMap(({ part, box }) => {
    const there = now.get(part.id);
    return there ? [Math.hypot(there.x - box.x, there.y - box.y)] : [];
  });
}
