/** The program behind `npm run measure:rules`; run.mjs bundles and starts it. */
import { openTestBench } from '../../fixture/bench';
import { loadBuilds } from './builds';
import { missedGoals } from './goals';
import { type Measured, measureClean, measureSeeds } from './measure';
import { drawReport } from './report';
import { makeSeeds, WAITING } from './seeds';

export interface Options {
  readonly json: boolean;
  readonly only: string;
  readonly faults: boolean;
  readonly remarks: boolean;
}

/** @returns The exit code: 1 where a goal is missed. */
export async function runMeasurement(
  root: string,
  options: Options,
  print: (text: string) => void,
): Promise<number> {
  const bench = await openTestBench();
  const builds = loadBuilds(root);
  const all = makeSeeds(builds);
  const waiting = all.filter(({ rule }) => WAITING.includes(rule));
  const seeds = all.filter(
    ({ rule, build }) =>
      !WAITING.includes(rule) && (rule.includes(options.only) || build.includes(options.only)),
  );
  const measured: Measured = { ...measureClean(bench, builds), ...measureSeeds(bench, builds, seeds) };
  const missed = missedGoals(measured);
  if (options.json) print(`${JSON.stringify({ ...measured, missed }, null, 2)}\n`);
  else {
    print(drawReport(measured, options.faults));
    if (waiting.length > 0) print(`${waiting.length} seeds wait for ${WAITING.length} rules\n`);
    if (options.remarks) print(measured.remarks.map((line) => `remark: ${line}\n`).join(''));
    print(missed.length === 0 ? 'every goal is met\n' : missed.map((line) => `missed: ${line}\n`).join(''));
  }
  return missed.length === 0 ? 0 : 1;
}
