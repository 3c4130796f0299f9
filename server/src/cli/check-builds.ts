/** Runs the façade over builds on disk and gathers findings with their texts, in an order that never changes. */
import { relative } from 'node:path';
import { createAnalyser } from '../analysis';
import type { Finding, Severity } from '../base/finding';
import type { Span } from '../base/span';
import {
  ceilingOf,
  compareText,
  createTextReader,
  type FileProblem,
  findProjects,
  loadLibrary,
  loadProject,
  slashed,
} from '../files';
import { createSketchParser } from '../sketch';
import { LineIndex } from './lines';

/** All that one run found. */
export interface CheckResult {
  /** Ordered by file, start and rule. */
  readonly findings: readonly Finding[];
  /** Builds that were checked to the end. */
  readonly sketches: number;
  readonly counts: Readonly<Record<Severity, number>>;
  /** What could not be checked; paths as people should read them. */
  readonly problems: readonly FileProblem[];
  /** What a bound left out, in whole sentences. */
  readonly notes: readonly string[];
  /** Lines of the file a span lies in. */
  linesOf(file: string): LineIndex;
  /** The file relative to the current folder. */
  nameOf(file: string): string;
}

/**
 * Checks every build that `paths` lead to.
 * @param base The current folder.
 * @param schemas The folder of boards, parts and libraries.
 * @throws Error in words where the installation is broken; never because of what a user's file holds.
 */
export async function checkBuilds(
  paths: readonly string[],
  base: string,
  schemas: string,
): Promise<CheckResult> {
  const found = findProjects(paths, base);
  const nameOf = (file: string) => slashed(relative(base, file)) || '.';
  const problems: FileProblem[] = [...found.problems];
  const notes = new Set(found.notes);
  const findings: Finding[] = [];
  const indexes = new Map<string, LineIndex>();
  let sketches = 0;
  const reader = createTextReader();
  const readText = (path: string) => {
    const read = reader.read(path);
    return read.ok ? read.text : undefined;
  };
  if (found.folders.length > 0) {
    const analyser = createAnalyser(loadLibrary(schemas), readText);
    // Which engine parses is the server's log's business; here it must not mix with the output.
    const parser = await createSketchParser({ log: () => {} });
    for (const folder of found.folders) {
      const project = loadProject(folder, reader, ceilingOf(folder, paths, base));
      problems.push(...project.problems.map((each) => ({ ...each, path: nameOf(each.path) })));
      for (const note of project.notes) {
        notes.add(note);
      }
      if (project.manifest === undefined) {
        continue;
      }
      const sources = project.sources.map((source) => parser.parse(source.file, source.text));
      try {
        const snapshot = analyser.analyse({ manifest: project.manifest, sources });
        findings.push(...snapshot.findings);
        sketches += 1;
        for (const fault of snapshot.faults) {
          const why = `the rule ${fault.rule} failed (${wordsOf(fault.error)}); this is a fault of ours`;
          problems.push({ path: nameOf(folder), why });
        }
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        problems.push({
          path: nameOf(folder),
          why: `could not be checked (${why}); this is a fault of ours`,
        });
      } finally {
        for (const source of sources) {
          source.dispose();
        }
      }
      // Native trees are let go in a turn of the event loop of their own: without one, a folder of sketches piles up.
      await new Promise<void>((resolve) => setImmediate(resolve));
    }
  }
  findings.sort(
    (a, b) => compareSpans(a.span, b.span) || compareText(a.rule, b.rule) || compareText(a.key, b.key),
  );
  return {
    findings,
    sketches,
    counts: countSeverities(findings),
    problems,
    notes: [...notes],
    linesOf(file) {
      const known = indexes.get(file);
      const index = known ?? new LineIndex(readText(file) ?? '');
      indexes.set(file, index);
      return index;
    },
    nameOf,
  };
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function compareSpans(a: Span, b: Span): number {
  return compareText(a.file, b.file) || a.start - b.start || a.end - b.end;
}

function countSeverities(findings: readonly Finding[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const finding of findings) {
    counts[finding.severity] += 1;
  }
  return counts;
}
