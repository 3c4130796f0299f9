/** Puts the reports of all shards together into the report that one run over everything would have given. */
import { makeReport, type Report } from './report';
import { readShard } from './shard';

/** The report, or a whole sentence that says why there is none. */
export type Merged =
  | { readonly ok: true; readonly report: Report }
  | { readonly ok: false; readonly why: string };

/**
 * Merges reports.
 * @param named The reports with the names of their files. Shards have to be complete; whole reports have to hold
 * different sketches.
 */
export function mergeReports(named: readonly (readonly [file: string, report: Report])[]): Merged {
  const [first] = named;
  if (first === undefined) {
    return { ok: false, why: 'There is no report to merge.' };
  }
  const [firstFile, { tool }] = first;
  for (const [file, report] of named) {
    if (report.tool.name !== tool.name || report.tool.version !== tool.version) {
      return {
        ok: false,
        why: `${firstFile} was made by ${tool.name} ${tool.version} and ${file} by ${report.tool.name} ${report.tool.version}. Make all of them with the same version.`,
      };
    }
    if ((report.shard === undefined) !== (first[1].shard === undefined)) {
      return { ok: false, why: `Of ${firstFile} and ${file} only one is a shard. Merge shards with shards.` };
    }
    if ((report.baseline === undefined) !== (first[1].baseline === undefined)) {
      return { ok: false, why: `Of ${firstFile} and ${file} only one was checked against a baseline.` };
    }
  }
  const wrong = first[1].shard === undefined ? findRepeated(named) : findMissing(named);
  if (wrong !== undefined) {
    return { ok: false, why: wrong };
  }
  const reports = named.map(([, report]) => report);
  const baselines = reports.flatMap(({ baseline }) => baseline ?? []);
  return {
    ok: true,
    report: makeReport({
      tool,
      sketches: reports.flatMap((report) => report.sketches),
      findings: reports.flatMap((report) => report.findings),
      problems: reports.flatMap((report) => report.problems),
      notes: reports.flatMap((report) => report.notes),
      ...(baselines.length === 0
        ? {}
        : {
            baseline: {
              known: baselines.reduce((sum, { known }) => sum + known, 0),
              gone: baselines.reduce((sum, { gone }) => sum + gone, 0),
            },
          }),
    }),
  };
}

function findRepeated(named: readonly (readonly [string, Report])[]): string | undefined {
  const seen = new Map<string, string>();
  for (const [file, { sketches }] of named) {
    for (const sketch of sketches) {
      const before = seen.get(sketch);
      if (before !== undefined) {
        return `The sketch ${sketch} is in ${before} and in ${file}.`;
      }
      seen.set(sketch, file);
    }
  }
  return undefined;
}

function findMissing(named: readonly (readonly [string, Report])[]): string | undefined {
  const files = new Map<number, string>();
  let count = 0;
  for (const [file, report] of named) {
    const shard = readShard(report.shard ?? '');
    if (shard === undefined) {
      return `${file} calls itself shard "${report.shard}", which is none.`;
    }
    if (count !== 0 && shard.count !== count) {
      return `${file} is one of ${shard.count} shards, the others are of ${count}.`;
    }
    const before = files.get(shard.index);
    if (before !== undefined) {
      return `${before} and ${file} are both shard ${report.shard}.`;
    }
    count = shard.count;
    files.set(shard.index, file);
  }
  const missing = Array.from({ length: count }, (_, at) => at + 1).filter((index) => !files.has(index));
  return missing.length === 0
    ? undefined
    : `${missing.length === 1 ? 'Shard' : 'Shards'} ${missing.map((index) => `${index}/${count}`).join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing.`;
}
