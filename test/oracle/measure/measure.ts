/** One sketch, and all of them: what the sketch layer says against what the chip did, in figures. */

import type { PinUse, SketchFacts } from '../../../server/src/base/pin-use';
import type { LibraryFacts } from '../../../server/src/base/platform';
import { readSketch, type SketchParser } from '../../../server/src/sketch';
import type { SketchFile } from '../firmware/compile-firmware';
import { findFalseCertainties } from './certainty';
import type { Chip } from './chips';
import { type CorpusSketch, RUN_TIME_PINS } from './corpus';
import { judgeEvents, type Verdict } from './events';
import { linesOf } from './lines';
import { type ArgumentCounts, countArguments, judgeArguments } from './pin-arguments';
import { type Bench, runSketch } from './run-sketch';

export interface Tools extends Bench {
  readonly parser: SketchParser;
  readonly libraries: readonly LibraryFacts[];
}

export interface Figures {
  readonly sketches: number;
  readonly events: number;
  /** Events that a use with a known pin foresaw. */
  readonly foreseen: number;
  /** Events behind a use that says its pin is unknown. */
  readonly said: number;
  readonly missed: number;
  readonly falseCertainties: number;
  /** Uses called certain: how much the figure before stands on. */
  readonly certain: number;
  readonly arguments: ArgumentCounts;
}

export interface SketchResult extends Figures {
  readonly feature: string;
  readonly name: string;
  /** Sentences on everything that is not as it should be. */
  readonly faults: readonly string[];
  /** Scripts under which setup() or loop() never came back, so that claims about them were not tried. */
  readonly untried: readonly string[];
}

/** What the layer says of some files. */
export function readUses(tools: Tools, chip: Chip, files: readonly SketchFile[]): SketchFacts {
  const parsed = files.map(({ name, text }) => tools.parser.parse(`/sketch/${name}`, text));
  try {
    return readSketch(parsed, chip.platform, tools.libraries);
  } finally {
    for (const one of parsed) {
      one.dispose();
    }
  }
}

const IDLE: readonly SketchFile[] = [{ name: 'idle.ino', text: 'void setup() {}\nvoid loop() {}\n' }];

async function idleStates(tools: Tools, chip: Chip): Promise<ReadonlySet<string>> {
  const runs = await runSketch(tools, chip, IDLE);
  return new Set(runs.flatMap(({ states }) => states));
}

/** @throws Error where the sketch does not compile or the simulator fails. */
export async function measureSketch(tools: Tools, sketch: CorpusSketch): Promise<SketchResult> {
  const chip = tools.chips[sketch.chip];
  const runs = await runSketch(tools, chip, sketch.files);
  const idle = await idleStates(tools, chip);
  const { uses } = readUses(tools, chip, sketch.files);
  const lines = linesOf(sketch.files);
  const events = judgeEvents(uses, runs, chip, idle);
  let wrong = findFalseCertainties(uses, runs, chip, lines);
  if (wrong.length > 0) {
    const longer = await runSketch(tools, chip, sketch.files, true);
    wrong = findFalseCertainties(uses, longer, chip, lines);
  }
  const judged = judgeArguments(uses, runs, chip, lines);
  const withVerdict = (verdict: Verdict) => events.filter((event) => event.verdict === verdict).length;
  const crashed = runs.filter(({ end }) => end === 'crashed').map(({ script }) => script);
  return {
    feature: sketch.feature,
    name: sketch.name,
    sketches: 1,
    events: events.length,
    foreseen: withVerdict('foreseen'),
    said: withVerdict('said'),
    missed: withVerdict('missed'),
    falseCertainties: new Set(wrong.map(({ what }) => what)).size,
    certain: uses.filter((use) => use.certain).length,
    arguments: countArguments(judged),
    faults: [
      ...crashed.map((script) => `the chip crashed under the script ${script}`),
      ...events
        .filter(({ verdict }) => verdict !== 'foreseen')
        .map(({ what, verdict, line }) => {
          return `${verdict === 'said' ? 'said to be unknown' : 'missed'}: ${what}${line === undefined ? '' : ` at ${line}`}`;
        }),
      ...new Set(wrong.map(({ what }) => `false certainty: ${what}`)),
      ...judged
        .filter(({ verdict }) => verdict !== 'exact')
        .map(
          ({ where, verdict, pins }) =>
            `argument ${verdict === 'set' ? `a set of ${pins}` : 'not resolved'}: ${where}`,
        ),
    ],
    untried: runs.flatMap(({ script, setupDone, rounds }) => {
      return !setupDone ? [`setup() under ${script}`] : rounds === 0 ? [`loop() under ${script}`] : [];
    }),
  };
}

/** A few at a time: compiler and simulator are processes of their own. */
export async function measureAll(
  tools: Tools,
  sketches: readonly CorpusSketch[],
  each: (result: SketchResult) => void = () => undefined,
): Promise<readonly SketchResult[]> {
  const results: SketchResult[] = [];
  let next = 0;
  const work = async (): Promise<void> => {
    for (let index = next++; index < sketches.length; index = next++) {
      const sketch = sketches[index];
      if (sketch !== undefined) {
        const result = await measureSketch(tools, sketch).catch((error: unknown) => {
          const { feature, name } = sketch;
          throw new Error(`${feature}/${name} could not be run. ${error}`, { cause: error });
        });
        results[index] = result;
        each(result);
      }
    }
  };
  await Promise.all([work(), work()]);
  return results;
}

/** Adds up. */
export function total(figures: readonly Figures[]): Figures {
  const sum = (of: (one: Figures) => number) => figures.reduce((before, one) => before + of(one), 0);
  return {
    sketches: sum((one) => one.sketches),
    events: sum((one) => one.events),
    foreseen: sum((one) => one.foreseen),
    said: sum((one) => one.said),
    missed: sum((one) => one.missed),
    falseCertainties: sum((one) => one.falseCertainties),
    certain: sum((one) => one.certain),
    arguments: {
      exact: sum((one) => one.arguments.exact),
      set: sum((one) => one.arguments.set),
      none: sum((one) => one.arguments.none),
    },
  };
}

/** The goals: shares of events foreseen and of arguments exact, and false certainties. */
export const GOALS = { foreseen: 0.995, exact: 0.97, falseCertainties: 0 } as const;

export interface Shares {
  readonly foreseen: number;
  readonly exact: number;
  readonly falseCertainties: number;
}

/**
 * What the goals are held against. Pins that are chosen while the sketch runs can be foreseen by nobody: for their
 * feature, that the layer says so is as good as foreseen, and its arguments are left out.
 */
export function sharesOf(results: readonly SketchResult[]): Shares {
  const sums = total(results);
  const open = total(results.filter(({ feature }) => feature === RUN_TIME_PINS));
  const { exact, set, none } = total(results.filter(({ feature }) => feature !== RUN_TIME_PINS)).arguments;
  return {
    foreseen: sums.events === 0 ? 1 : (sums.foreseen + open.said) / sums.events,
    exact: exact + set + none === 0 ? 1 : exact / (exact + set + none),
    falseCertainties: sums.falseCertainties,
  };
}

export function meetsGoals(shares: Shares): boolean {
  return (
    shares.foreseen >= GOALS.foreseen &&
    shares.exact >= GOALS.exact &&
    shares.falseCertainties <= GOALS.falseCertainties
  );
}

/** How one use is told apart from another in the same text, whatever the way there. */
export function useKey(use: PinUse): string {
  const pins = use.pins.kind === 'known' ? use.pins.values.join(',') : '?';
  return `${use.call} ${use.action} ${pins} ${use.phase}`;
}
