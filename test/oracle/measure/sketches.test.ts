/**
 * The sketch layer against the chip, on everything: written sketches by feature, the examples of the core's package,
 * and made ones with known answers. The same figures as `npm run measure:sketch`, held against the goals.
 */
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { firmwareToolsPresent } from '../firmware/compile-firmware';
import { requireOracle } from '../oracle';
import { findFalseCertainties } from './certainty';
import { type CorpusSketch, readCoreExamples, readCorpus } from './corpus';
import { judgeEvents } from './events';
import { compareAnswers, generateSketches } from './generate';
import { linesOf } from './lines';
import { GOALS, measureAll, readUses, sharesOf, type Tools } from './measure';
import { countArguments, judgeArguments } from './pin-arguments';
import { deleteTokens } from './report';
import { runSketch } from './run-sketch';
import { openTools } from './tools';

const ORACLE = 'AVR compiler, core and simulator';
const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const MINUTES = 60_000;
const SEED = 'harbour';
const MADE = 100;
/** Share of the uses outside a broken statement that outlive it: what is reached today, less a little. */
const SURVIVING = 0.97;

let tools: Tools;
beforeAll(async () => {
  tools = await openTools(ROOT);
});

const written = readCorpus(join(ROOT, 'test/oracle/sketches'));
const made = generateSketches(SEED, MADE);

/** Everything a sketch fell short in, for a message that tells more than a figure. */
async function shortcomings(sketches: readonly CorpusSketch[]) {
  const results = await measureAll(tools, sketches);
  const faults = results.flatMap(({ feature, name, faults: some }) =>
    some.map((fault) => `${feature}/${name}: ${fault}`),
  );
  return { shares: sharesOf(results), faults: faults.join('\n') };
}

describe('the collection', () => {
  test('holds enough sketches, on three chips, and says each thing once', () => {
    const on = (chip: string) => written.filter((sketch) => sketch.chip === chip).length;
    expect(written.length).toBeGreaterThanOrEqual(150);
    expect(on('mega')).toBeGreaterThanOrEqual(20);
    expect(on('leonardo')).toBeGreaterThanOrEqual(20);
    // The same text may stand there once for each chip.
    const texts = written.map(({ chip, files }) => `${chip} ${files.map(({ text }) => text).join('')}`);
    expect(new Set(texts).size).toBe(texts.length);
    const longest = written.map(
      ({ files }) =>
        files
          .map(({ text }) => text)
          .join('')
          .split('\n').length,
    );
    expect(Math.max(...longest)).toBeGreaterThan(800);
  });
});

describe('the sketch layer against the chip', () => {
  test('written sketches and those of the core', { timeout: 8 * MINUTES }, async (ctx) => {
    requireOracle(ctx, ORACLE, firmwareToolsPresent());
    const examples = readCoreExamples();
    expect(examples.length).toBeGreaterThanOrEqual(19);
    const { shares, faults } = await shortcomings([...written, ...examples]);
    expect.soft(shares.foreseen, faults).toBeGreaterThanOrEqual(GOALS.foreseen);
    expect.soft(shares.exact, faults).toBeGreaterThanOrEqual(GOALS.exact);
    expect(shares.falseCertainties, faults).toBe(GOALS.falseCertainties);
  });

  test(`${MADE} made sketches`, { timeout: 5 * MINUTES }, async (ctx) => {
    requireOracle(ctx, ORACLE, firmwareToolsPresent());
    const { shares, faults } = await shortcomings(made);
    expect(shares, faults).toEqual({ foreseen: 1, exact: 1, falseCertainties: 0 });
  });
});

describe('the sketch layer by itself', () => {
  test(`${MADE} made sketches give the answers they were made from`, () => {
    const wrong = made
      .map((sketch) => compareAnswers(sketch, readUses(tools, tools.chips.uno, sketch.files)))
      .filter(({ missing, extra }) => missing.length + extra.length > 0);
    expect(wrong).toEqual([]);
  });

  test('uses outlive a token that is missing elsewhere', () => {
    const here = firmwareToolsPresent() ? written : written.filter(({ chip }) => chip !== 'mega');
    const { outside, kept } = deleteTokens(tools, here, SEED);
    expect(outside).toBeGreaterThan(1000);
    expect(kept / outside).toBeGreaterThanOrEqual(SURVIVING);
  });
});

describe('the comparison can fail', () => {
  const files = [
    {
      name: 'small.ino',
      text: `void setup() { pinMode(7, OUTPUT); pinMode(2, INPUT_PULLUP); }
void loop() {
  digitalWrite(7, HIGH);
  if (digitalRead(2) == LOW) {
    digitalWrite(8, HIGH);
  }
  analogWrite(3, 99);
}
`,
    },
  ];

  test('on facts that leave something out, or claim too much', { timeout: MINUTES }, async (ctx) => {
    requireOracle(ctx, ORACLE, firmwareToolsPresent());
    const chip = tools.chips.uno;
    const lines = linesOf(files);
    const runs = await runSketch(tools, chip, files);
    const idle = new Set(['PB0 input']);
    const { uses } = readUses(tools, chip, files);
    const missed = (some: typeof uses) =>
      judgeEvents(some, runs, chip, idle)
        .filter(({ verdict }) => verdict === 'missed')
        .map(({ what }) => what);
    expect(missed(uses)).toEqual([]);
    expect(missed(uses.filter(({ action }) => action !== 'pwm')).sort()).toEqual([
      'drives PD3 low',
      'pwm 3 in between',
      'timer output timer2.b',
    ]);
    expect(missed(uses.filter(({ action }) => action !== 'mode')).sort()).toEqual([
      'drives PD7 high',
      'drives PD7 low',
      'mode 2 = 2',
      'mode 7 = 1',
      'pulls up PD2',
    ]);

    expect(findFalseCertainties(uses, runs, chip, lines)).toEqual([]);
    const bold = uses.map((use) => ({ ...use, certain: true }));
    const found = findFalseCertainties(bold, runs, chip, lines).map(
      ({ what, script }) => `${what}, ${script}`,
    );
    expect(found).toContain('digitalWrite of pin 8 at small.ino:5, high');
    expect(found).not.toContain('digitalWrite of pin 8 at small.ino:5, low');

    expect(countArguments(judgeArguments(uses, runs, chip, lines))).toEqual({ exact: 6, set: 0, none: 0 });
    const vague = uses.map((use) => ({
      ...use,
      certain: false,
      pins: { kind: 'known', values: [2, 7] } as const,
    }));
    expect(countArguments(judgeArguments(vague, runs, chip, lines)).set).toBeGreaterThan(0);
    const blind = uses.filter(({ action }) => action !== 'read');
    expect(countArguments(judgeArguments(blind, runs, chip, lines))).toEqual({ exact: 5, set: 0, none: 1 });
  });
});
