/** The measurement as a command: chooses sketches, measures, prints, gives the exit code. */
import { join } from 'node:path';
import { type CorpusSketch, readCoreExamples, readCorpus } from './corpus';
import { deleteToken, type Survival, survivors } from './deletion';
import { type Answered, compareAnswers, generateSketches } from './generate';
import {
  type Figures,
  GOALS,
  measureAll,
  meetsGoals,
  readUses,
  type SketchResult,
  sharesOf,
  type Tools,
  total,
} from './measure';
import { openTools } from './tools';

export interface MeasureOptions {
  readonly json: boolean;
  /** Sketches whose `feature/name` holds this text; all where empty. */
  readonly only: string;
  readonly faults: boolean;
  readonly generated: string;
  readonly seed: string;
}

/** Measures and prints. Answers the exit code: 0 where the goals are met, 1 where they are missed. */
export async function runMeasurement(
  root: string,
  options: MeasureOptions,
  print: (text: string) => void,
): Promise<number> {
  const tools = await openTools(root);
  const all: readonly CorpusSketch[] = [
    ...readCorpus(join(root, 'test/oracle/sketches')),
    ...readCoreExamples(),
  ];
  const made = generateSketches(options.seed, Number(options.generated));
  const chosen = [...all, ...made].filter(({ feature, name }) => `${feature}/${name}`.includes(options.only));
  const results = await measureAll(tools, chosen);
  const shares = sharesOf(results);
  const answered = made
    .filter((sketch) => chosen.includes(sketch))
    .map((sketch) => compareAnswers(sketch, readUses(tools, tools.chips[sketch.chip], sketch.files)));
  const survival = deleteTokens(tools, chosen, options.seed);
  if (options.json) {
    print(
      `${JSON.stringify({ goals: GOALS, shares, total: total(results), survival, answered, sketches: results }, undefined, 1)}\n`,
    );
  } else {
    print(tableOf(results));
    print(`\n${sentenceOf(shares)}\n`);
    print(`${sentenceOnAnswers(answered)}\n${sentenceOnSurvival(survival)}\n`);
    if (options.faults) {
      print(faultsOf(results));
      print(wrongAnswers(answered));
    }
  }
  return meetsGoals(shares) ? 0 : 1;
}

const HEADINGS = 'feature sketches events foreseen said missed certain false exact set none'.split(' ');

function tableOf(results: readonly SketchResult[]): string {
  const features = [...new Set(results.map(({ feature }) => feature))];
  const rows = features.map(
    (feature) => [feature, total(results.filter((one) => one.feature === feature))] as const,
  );
  const cells = [
    HEADINGS,
    ...[...rows, ['total', total(results)] as const].map(([name, sums]) => rowOf(name, sums)),
  ];
  const widths = HEADINGS.map((_, column) => Math.max(...cells.map((row) => row[column]?.length ?? 0)));
  const lines = cells.map((row) =>
    row
      .map((cell, at) => (at === 0 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0)))
      .join('  '),
  );
  return `${lines.join('\n')}\n`;
}

function rowOf(name: string, sums: Figures): readonly string[] {
  const { sketches, events, foreseen, said, missed, certain, falseCertainties, arguments: args } = sums;
  const counts = [sketches, events, foreseen, said, missed, certain, falseCertainties];
  return [name, ...[...counts, args.exact, args.set, args.none].map(String)];
}

function sentenceOf(shares: ReturnType<typeof sharesOf>): string {
  const percent = (share: number) => `${(share * 100).toFixed(2)} %`;
  return [
    `Events foreseen: ${percent(shares.foreseen)} (goal ${percent(GOALS.foreseen)})`,
    `False certainties: ${shares.falseCertainties} (goal ${GOALS.falseCertainties})`,
    `Pin arguments exact: ${percent(shares.exact)} (goal ${percent(GOALS.exact)})`,
  ].join('\n');
}

/** One token is taken out of each sketch. */
export function deleteTokens(tools: Tools, sketches: readonly CorpusSketch[], seed: string): Survival {
  const sums = { outside: 0, kept: 0, same: 0 };
  for (const { feature, name, chip, files } of sketches) {
    const deletion = deleteToken(files, `${seed} ${feature} ${name}`);
    if (deletion !== undefined) {
      const before = readUses(tools, tools.chips[chip], files);
      const after = readUses(tools, tools.chips[chip], deletion.files);
      const { outside, kept, same } = survivors(before.uses, after.uses, deletion);
      sums.outside += outside;
      sums.kept += kept;
      sums.same += same;
    }
  }
  return sums;
}

function sentenceOnSurvival({ outside, kept, same }: Survival): string {
  const share = (part: number) => `${((100 * part) / Math.max(1, outside)).toFixed(2)} %`;
  return `One token deleted from each: of ${outside} uses outside the broken statement ${share(kept)} are kept, ${share(same)} with their pins`;
}

function sentenceOnAnswers(answered: readonly Answered[]): string {
  const right = answered.filter(({ missing, extra }) => missing.length + extra.length === 0).length;
  return `Made sketches answered in full and no more: ${right} of ${answered.length}`;
}

function wrongAnswers(answered: readonly Answered[]): string {
  return answered
    .filter(({ missing, extra }) => missing.length + extra.length > 0)
    .map(({ name, missing, extra }) => {
      const lines = [
        ...missing.map((one) => `  not given: ${one}\n`),
        ...extra.map((one) => `  too much: ${one}\n`),
      ];
      return `\nanswers of ${name}\n${lines.join('')}`;
    })
    .join('');
}

function faultsOf(results: readonly SketchResult[]): string {
  const faulty = results.filter(({ faults, untried }) => faults.length + untried.length > 0);
  return faulty
    .map(({ feature, name, faults, untried }) => {
      const never = untried.map((what) => `came not back: ${what}`);
      return `\n${feature}/${name}\n${[...faults, ...never].map((fault) => `  ${fault}\n`).join('')}`;
    })
    .join('');
}
