/**
 * The baseline: findings that an old project starts with and does not want to hear of until it mends them. It holds no
 * places and no messages, only keys, so that edits elsewhere leave it true, and a finding that comes anew is told.
 */
import { posix } from 'node:path';
import { compareText } from '../../files';
import type { ReportFinding } from './report';

/** The format that is written, and the newest that is read. */
const FORMAT = 1;

/** Keys of known findings by sketch; a sketch's path is relative to the folder of the baseline's file. */
export type Baseline = ReadonlyMap<string, ReadonlySet<string>>;

/** The baseline, or a phrase that goes behind the file's name and a colon. */
export type BaselineRead =
  | { readonly ok: true; readonly baseline: Baseline }
  | { readonly ok: false; readonly why: string };

/** Writes the file: one line a sketch's key, ordered, so that a change of it reads well. */
export function writeBaseline(
  findings: readonly ReportFinding[],
  sketchName: (sketch: string) => string,
): string {
  const bySketch = new Map<string, string[]>();
  for (const { sketch, key } of findings) {
    const name = sketchName(sketch);
    bySketch.set(name, [...(bySketch.get(name) ?? []), key]);
  }
  const sketches = [...bySketch]
    .sort(([a], [b]) => compareText(a, b))
    .map(([name, keys]) => [name, keys.sort(compareText)] as const);
  return `${JSON.stringify({ format: FORMAT, known: Object.fromEntries(sketches) }, undefined, 2)}\n`;
}

/** Reads the file's text. */
export function readBaseline(text: string): BaselineRead {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return { ok: false, why: `is no JSON (${error instanceof Error ? error.message : String(error)})` };
  }
  if (typeof data !== 'object' || data === null || !('format' in data) || typeof data.format !== 'number') {
    return { ok: false, why: 'is no baseline; write one with --write-baseline' };
  }
  if (data.format !== FORMAT) {
    return {
      ok: false,
      why: `has format ${data.format}; this program knows format ${FORMAT}. Update the program or write the baseline anew`,
    };
  }
  const known = 'known' in data ? data.known : undefined;
  if (typeof known !== 'object' || known === null || Array.isArray(known)) {
    return { ok: false, why: 'has no "known" with keys by sketch; write it anew with --write-baseline' };
  }
  const baseline = new Map<string, ReadonlySet<string>>();
  for (const [sketch, keys] of Object.entries(known)) {
    if (!Array.isArray(keys) || !keys.every((key) => typeof key === 'string')) {
      return { ok: false, why: `has no list of keys for ${sketch}; write it anew with --write-baseline` };
    }
    baseline.set(posix.normalize(sketch), new Set(keys));
  }
  return { ok: true, baseline };
}

/** What a baseline leaves of a run. */
export interface Compared {
  readonly findings: readonly ReportFinding[];
  readonly known: number;
  /** Keys of the baseline that were not found in the sketches of this run; of other sketches nothing is known. */
  readonly gone: number;
}

/**
 * Takes the known findings out.
 * @param sketches The sketches that were checked.
 */
export function compareWithBaseline(
  findings: readonly ReportFinding[],
  sketches: readonly string[],
  baseline: Baseline,
  sketchName: (sketch: string) => string,
): Compared {
  const left = findings.filter(({ sketch, key }) => baseline.get(sketchName(sketch))?.has(key) !== true);
  const known = findings.length - left.length;
  const expected = sketches.reduce((sum, sketch) => sum + (baseline.get(sketchName(sketch))?.size ?? 0), 0);
  return { findings: left, known, gone: expected - known };
}
