/** Runs of a sketch on its chip, kept by the content of everything they depend on. */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SketchFile } from '../firmware/compile-firmware';
import { type PinEvents, runFirmwareOften } from '../firmware/run-firmware';
import type { Chip } from './chips';
import { type Script, scriptsFor } from './inputs';

/** A recorded call without its time: once for each line, pin and value. */
export type Call = Pick<PinEvents['calls'][number], 'action' | 'pin' | 'value' | 'at'>;

/** What one run did, as far as the comparison wants to know. */
export interface Run
  extends Pick<PinEvents, 'states' | 'compares' | 'lines' | 'setupDone' | 'rounds' | 'end'> {
  readonly script: Script['title'];
  readonly calls: readonly Call[];
}

export interface Bench {
  /** Root of the project: the folder of its package.json. */
  readonly root: string;
  readonly chips: Readonly<Record<Chip['name'], Chip>>;
}

/** Raised when what is kept gets another form. */
const FORM = 3;

/**
 * The runs of a sketch under all scripts.
 * @throws Error with the compiler's or the simulator's output where either fails.
 */
export async function runSketch(
  bench: Bench,
  chip: Chip,
  files: readonly SketchFile[],
  longer = false,
): Promise<readonly Run[]> {
  const scripts = scriptsFor(chip, files, longer);
  const kept = join(bench.root, '.test-output/sketch-runs', `${keyOf(bench, chip, files, scripts)}.json`);
  try {
    return JSON.parse(readFileSync(kept, 'utf8')) as readonly Run[];
  } catch {
    // Not kept yet, or cut off: made anew.
  }
  const all = await runFirmwareOften(files, { ...chip.target, skipWaits: true }, scripts);
  const runs = all.map((events, index): Run => {
    const { states, compares, lines, setupDone, rounds, end } = events;
    const script = scripts[index]?.title ?? 'low';
    return { script, calls: distinct(events.calls), states, compares, lines, setupDone, rounds, end };
  });
  mkdirSync(join(bench.root, '.test-output/sketch-runs'), { recursive: true });
  writeFileSync(`${kept}.${process.pid}`, JSON.stringify(runs));
  renameSync(`${kept}.${process.pid}`, kept);
  return runs;
}

function distinct(calls: PinEvents['calls']): readonly Call[] {
  const found = new Map<string, Call>();
  for (const { action, pin, value, at } of calls) {
    const call = { action, pin, value, ...(at === undefined ? {} : { at }) };
    found.set(JSON.stringify(call), call);
  }
  return [...found.values()];
}

/** Sources of the oracle that a run depends on, read once. */
let oracleText: string | undefined;

function keyOf(bench: Bench, chip: Chip, files: readonly SketchFile[], scripts: readonly Script[]): string {
  if (oracleText === undefined) {
    const folder = join(bench.root, 'test/oracle/firmware');
    const paths = [
      ...readdirSync(join(folder, 'chip')).map((name) => join('chip', name)),
      ...['compile-firmware.ts', 'run-firmware.ts', 'prototypes.ts'],
    ];
    oracleText = paths.map((path) => readFileSync(join(folder, path), 'utf8')).join('\0');
  }
  const hash = createHash('sha256');
  hash.update(JSON.stringify([FORM, chip.target, files, scripts])).update(oracleText);
  return hash.digest('hex').slice(0, 24);
}
