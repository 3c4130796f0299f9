/**
 * What the rule book finds: the clean builds, which have to be silent, and the same builds with one fault each. Every
 * offered fix of what was found is carried out: the fault must go, nothing may come, and no comment may be lost.
 */
import type { Snapshot } from '../../../server/src/analysis';
import type { Finding } from '../../../server/src/base/finding';
import type { TestBench } from '../../fixture/bench';
import { checkFixes } from '../../fixture/check-example';
import { type CleanBuild, type Files, mainSketch } from './builds';
import { applySeed, describe, isAt, type Seed } from './seed';
import { variantsOf } from './variants';

export interface RuleRow {
  readonly rule: string;
  /** Seeds that the rule has to find. */
  readonly seeded: number;
  /** Of these: the rule spoke somewhere, and the rule spoke at the right place. */
  readonly found: number;
  readonly placed: number;
  /** Seeds just inside a limit, and those of them on which the rule spoke. */
  readonly inside: number;
  readonly spoke: number;
  /** Errors and warnings of other rules that the seeds do not expect. */
  readonly extra: number;
  /** Fixes carried out, and those that failed. */
  readonly fixes: number;
  readonly brokenFixes: number;
}

export interface Measured {
  readonly builds: number;
  /** The same written otherwise. */
  readonly variants: number;
  /** Errors and warnings on clean builds, one line each. */
  readonly falseAlarms: readonly string[];
  /** Information and hints on clean builds. */
  readonly remarks: readonly string[];
  readonly rows: readonly RuleRow[];
  /** What went wrong, one line each. */
  readonly faults: readonly string[];
}

export function measureClean(
  bench: TestBench,
  builds: readonly CleanBuild[],
): Omit<Measured, 'rows' | 'faults'> {
  const falseAlarms: string[] = [];
  const remarks: string[] = [];
  const variants = builds.flatMap(variantsOf);
  for (const { name, files } of [...builds, ...variants]) {
    for (const finding of bench.analyse(files).findings) {
      (weighs(finding) ? falseAlarms : remarks).push(`${name}: ${finding.rule}: ${finding.message}`);
    }
  }
  return { builds: builds.length, variants: variants.length, falseAlarms, remarks };
}

export function measureSeeds(
  bench: TestBench,
  builds: readonly CleanBuild[],
  seeds: readonly Seed[],
): Pick<Measured, 'rows' | 'faults'> {
  const byName = new Map(builds.map((build) => [build.name, build]));
  const rows = new Map<string, Writable<RuleRow>>();
  const faults: string[] = [];
  for (const seed of seeds) {
    const row = rows.get(seed.rule) ?? emptyRow(seed.rule);
    rows.set(seed.rule, row);
    const build = byName.get(seed.build);
    if (!build) throw new Error(`${describe(seed)}: there is no such build`);
    const files = applySeed(build, seed);
    const snapshot = bench.analyse(files);
    const own = snapshot.findings.filter((finding) => finding.rule === seed.rule);
    if (seed.silent) {
      row.inside++;
      if (own[0]) {
        row.spoke++;
        faults.push(`${describe(seed)}: speaks inside its limit: ${own[0].message}`);
      }
    } else {
      row.seeded++;
      if (own.length > 0) row.found++;
      const placed = own.filter((finding) => isAt(finding, seed, files, mainSketch(build)));
      if (placed.length > 0) row.placed++;
      else faults.push(missing(seed, snapshot, own));
      for (const finding of placed) tryFixes(bench, files, snapshot, finding, row, faults, seed);
    }
    for (const finding of snapshot.findings) {
      const expected = finding.rule === seed.rule || seed.besides?.includes(finding.rule);
      if (expected || !weighs(finding)) continue;
      row.extra++;
      faults.push(`${describe(seed)}: brings also ${finding.rule}: ${finding.message}`);
    }
  }
  return { rows: [...rows.values()].sort((a, b) => (a.rule < b.rule ? -1 : 1)), faults };
}

function tryFixes(
  bench: TestBench,
  files: Files,
  snapshot: Snapshot,
  finding: Finding,
  row: { fixes: number; brokenFixes: number },
  faults: string[],
  seed: Seed,
): void {
  row.fixes += finding.fixes.length;
  try {
    checkFixes(bench, { files }, snapshot, finding);
  } catch (error) {
    row.brokenFixes++;
    faults.push(
      `${describe(seed)}: fix: ${String(error instanceof Error ? error.message : error).split('\n')[0]}`,
    );
  }
}

function missing(seed: Seed, snapshot: Snapshot, own: readonly Finding[]): string {
  const said = (own.length > 0 ? own : snapshot.findings).map(
    ({ rule, message, span }) => `${rule}@${span.file}:${span.start} ${message}`,
  );
  const what = own.length > 0 ? 'stands elsewhere' : 'is not found';
  return `${describe(seed)}: ${what}; said: ${said.join(' | ') || 'nothing'}`;
}

type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

function emptyRow(rule: string): Writable<RuleRow> {
  return { rule, seeded: 0, found: 0, placed: 0, inside: 0, spoke: 0, extra: 0, fixes: 0, brokenFixes: 0 };
}

/** A habit may show up; an error or a warning is an alarm. */
function weighs({ severity }: Finding): boolean {
  return severity === 'error' || severity === 'warning';
}
