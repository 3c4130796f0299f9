/** The two engines, random edits, and memory: what a parser must keep to whatever is typed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SketchFacts } from '../../../server/src/base/pin-use';
import {
  createSketchParser,
  type ParsedFile,
  readSketch,
  type SketchParser,
  type TextChange,
} from '../../../server/src/sketch';
import { requireOracle } from '../../oracle/oracle';
import { longSketch } from './long-sketch';
import { libraries, platform } from './platform';
import { parser } from './reading';
import { samples } from './samples';

const facts = (parsed: ParsedFile): SketchFacts => readSketch([parsed], platform, libraries);

/** Lets the engine's own clean-up run: native trees are freed between two turns of the event loop. */
const turn = () => new Promise<void>((resolve) => setImmediate(resolve));

/** The native engine; without it the test is skipped with a word, or fails where oracles are required. */
async function nativeParser(context: { skip(reason?: string): void }): Promise<SketchParser> {
  const native = await createSketchParser({ engine: 'native' }).catch(() => undefined);
  requireOracle(context, 'the native parser', native !== undefined);
  return native ?? (await parser());
}

function change(text: string, { start, end, text: inserted }: TextChange): string {
  return text.slice(0, start) + inserted + text.slice(end);
}

describe('native and WebAssembly', () => {
  it('give the same facts for every sample', async (context) => {
    const native = await nativeParser(context);
    const wasm = await createSketchParser({ engine: 'wasm' });
    expect([native.engine, wasm.engine]).toEqual(['native', 'wasm']);
    for (const text of [...samples, longSketch(400)]) {
      const one = native.parse('a.ino', text);
      const other = wasm.parse('a.ino', text);
      expect(other.form).toEqual(one.form);
      expect(facts(other)).toEqual(facts(one));
      one.dispose();
      other.dispose();
    }
  });

  it('says so where the native engine does not load, and facts survive JSON', async () => {
    const parsed = (await parser()).parse('a.ino', samples.join('\n'));
    const found = facts(parsed);
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
    expect(JSON.parse(JSON.stringify(parsed.form))).toEqual(parsed.form);
  });
});

const pieces = [
  ';',
  '{',
  '}',
  '(',
  ')',
  '"',
  '/*',
  '*/',
  '//',
  '\n',
  '\r\n',
  '#if 1\n',
  '#endif\n',
  '#define P 4\n',
  ' PROGMEM ',
  'digitalWrite(P, HIGH);',
  'int x = 3;',
  'for (;;) ',
  'if (x) ',
  '=',
  '7',
  'a',
  '\u{1F4A1}',
  '漢',
  '\0',
];

const editOf = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  cut: fc.integer({ min: 0, max: 12 }),
  text: fc.oneof(fc.constantFrom(...pieces), fc.constant(''), fc.string({ maxLength: 4 })),
});

async function checkEdits(engine: SketchParser, runs: number): Promise<void> {
  fc.assert(
    fc.property(
      fc.constantFrom(...samples),
      fc.array(editOf, { minLength: 1, maxLength: 8 }),
      (sample, list) => {
        let text = sample;
        let parsed = engine.parse('a.ino', text);
        for (const { at, cut, text: inserted } of list) {
          const start = Math.floor(at * text.length);
          const step = { start, end: Math.min(text.length, start + cut), text: inserted };
          const next = change(text, step);
          parsed = engine.reparse(parsed, next, [step]);
          text = next;
        }
        const fresh = engine.parse('a.ino', text);
        const isClean = fresh.form.units.every(({ unit }) => unit.clean);
        // Offsets stay exact even where the grammar recovers from an error in another way than it would from nothing.
        for (const { start, unit } of parsed.form.units)
          expect(text.slice(start, start + unit.text.length)).toBe(unit.text);
        if (isClean) {
          expect(parsed.form).toEqual(fresh.form);
          expect(facts(parsed)).toEqual(facts(fresh));
        } else facts(parsed);
        parsed.dispose();
        fresh.dispose();
      },
    ),
    { numRuns: runs },
  );
}

describe('random edits', () => {
  it('end at the same form as a fresh parse, natively', async (context) => {
    await checkEdits(await nativeParser(context), 800);
  });
  it('and in WebAssembly', async () => {
    await checkEdits(await createSketchParser({ engine: 'wasm' }), 200);
  });
  it('an edit that is taken back leads to the form from before', async () => {
    const engine = await parser();
    for (const sample of samples) {
      let parsed = engine.parse('a.ino', sample);
      const before = facts(parsed);
      for (const [index, piece] of pieces.entries()) {
        const start = Math.floor((sample.length * (index + 1)) / (pieces.length + 1));
        const there = { start, end: start, text: piece };
        parsed = engine.reparse(parsed, change(sample, there), [there]);
        const back = { start, end: start + piece.length, text: '' };
        parsed = engine.reparse(parsed, sample, [back]);
        expect(facts(parsed)).toEqual(before);
      }
      parsed.dispose();
    }
  });
  it('survives changes that do not lead to the text', async () => {
    const engine = await parser();
    const parsed = engine.parse('a.ino', samples[0] ?? '');
    const other = 'void setup() { pinMode(3, OUTPUT); }';
    const again = engine.reparse(parsed, other, [{ start: 900_000, end: 900_001, text: 'x' }]);
    expect(again.form).toEqual(engine.parse('a.ino', other).form);
  });
});

/** Pieces that leave a whole text whole when they stand behind a semicolon in a body. */
const wholePieces = [
  ' ',
  '\n',
  '\r\n',
  ' // 漢 \u{1F4A1}\n',
  ' /* ; */ ',
  ' digitalWrite(4, LOW);',
  ' { int q = 9; pinMode(q, OUTPUT); }',
];

describe('random edits of whole texts', () => {
  it('end at the same form and facts as a fresh parse', async () => {
    const engine = await parser();
    const whole = fc.record({ nth: fc.nat(40), text: fc.constantFrom(...wholePieces) });
    let compared = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...samples),
        fc.array(whole, { minLength: 1, maxLength: 6 }),
        (sample, list) => {
          let text = sample;
          let parsed = engine.parse('a.ino', text);
          for (const { nth, text: inserted } of list) {
            const ends = [...text.matchAll(/^[ \t]+\w[^\n;]*\);(?=\r?\n)/gm)].map(
              (match) => match.index + match[0].length,
            );
            const start = ends[nth % Math.max(1, ends.length)] ?? text.length;
            const step = { start, end: start, text: inserted };
            text = change(text, step);
            parsed = engine.reparse(parsed, text, [step]);
          }
          const fresh = engine.parse('a.ino', text);
          if (fresh.form.units.every(({ unit }) => unit.clean)) compared += 1;
          expect(parsed.form).toEqual(fresh.form);
          expect(facts(parsed)).toEqual(facts(fresh));
          parsed.dispose();
          fresh.dispose();
        },
      ),
      { numRuns: 600 },
    );
    expect(compared).toBeGreaterThan(400);
  });
});

describe('memory', () => {
  for (const name of ['native', 'wasm'] as const) {
    it(`500 parses of a 2,000-line sketch after a keystroke stay within 60 MB, ${name}`, async (context) => {
      const engine =
        name === 'native' ? await nativeParser(context) : await createSketchParser({ engine: name });
      let text = longSketch(2000);
      let parsed = engine.parse('a.ino', text);
      const key = async (index: number) => {
        const start = text.indexOf(';', (index * 7919) % (text.length - 100)) + 1;
        const step = index % 2 === 0 ? { start, end: start, text: ' ' } : { start, end: start, text: '\n' };
        text = change(text, step);
        parsed = engine.reparse(parsed, text, [step]);
        await turn();
      };
      for (let index = 0; index < 100; index += 1) await key(index);
      const before = process.memoryUsage().rss;
      for (let index = 100; index < 600; index += 1) await key(index);
      expect((process.memoryUsage().rss - before) / 1e6).toBeLessThan(60);
    }, 60_000);
  }
});
