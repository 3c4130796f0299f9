/**
 * Checks the sketch of one folder: from its files to findings with lines and columns. What comes back is plain data and
 * holds no text, so that a thread can hand it over. Nothing is kept between folders but what the façade keeps.
 */
import { relative } from 'node:path';
import { createAnalyser, type LibraryTexts, type Snapshot } from '../../analysis';
import type { Finding } from '../../base/finding';
import type { Span } from '../../base/span';
import {
  ceilingOf,
  createTextReader,
  type FileProblem,
  loadProject,
  type ProjectFiles,
  slashed,
  type TextReader,
} from '../../files';
import { createSketchParser } from '../../sketch';
import { LineIndex } from '../print/lines';
import type { ReportFinding } from './report';

/** What every folder is checked with. */
export interface CheckSetting {
  readonly library: LibraryTexts;
  /** The current folder. */
  readonly base: string;
  /** Paths as they were named: an include never leads out of them. */
  readonly paths: readonly string[];
}

/** What came of one folder. */
export interface FolderResult {
  /** As people should read it. */
  readonly sketch: string;
  /** False where it could not be checked to the end. */
  readonly checked: boolean;
  readonly findings: readonly ReportFinding[];
  readonly problems: readonly FileProblem[];
  readonly notes: readonly string[];
  /** Absolute paths that were looked for, found or not: a change of any may change the result. */
  readonly looked: readonly string[];
}

/** Checks one folder after the other. Never throws because of what a user's file holds. */
export type FolderChecker = (folder: string) => Promise<FolderResult>;

/** Makes a checker; the parser is loaded once. */
export async function createFolderChecker({ library, base, paths }: CheckSetting): Promise<FolderChecker> {
  // Which engine parses is the server's log's business; here it must not mix with the output.
  const parser = await createSketchParser({ log: () => {} });
  let looked = new Set<string>();
  let reader = createTextReader();
  const noting: TextReader = {
    read(path) {
      looked.add(path);
      return reader.read(path);
    },
    keepOnly: () => {},
  };
  const analyser = createAnalyser(library, (path) => {
    const read = noting.read(path);
    return read.ok ? read.text : undefined;
  });
  const nameOf = (file: string) => slashed(relative(base, file)) || '.';

  return async (folder) => {
    // A reader of its own: texts of a thousand sketches are not kept.
    looked = new Set();
    reader = createTextReader();
    const project = loadProject(folder, noting, ceilingOf(folder, paths, base));
    const sketch = nameOf(folder);
    const problems = project.problems.map((each) => ({ ...each, path: nameOf(each.path) }));
    const fault = (what: string) => problems.push({ path: sketch, why: `${what}; this is a fault of ours` });
    let findings: readonly ReportFinding[] = [];
    let checked = false;
    if (project.manifest !== undefined) {
      const sources = project.sources.map((source) => parser.parse(source.file, source.text));
      try {
        const snapshot = analyser.analyse({ manifest: project.manifest, sources });
        findings = placeFindings(snapshot, project, sketch, nameOf);
        checked = true;
        for (const { rule, error } of snapshot.faults) {
          fault(`the rule ${rule} failed (${wordsOf(error)})`);
        }
      } catch (error) {
        fault(`could not be checked (${wordsOf(error)})`);
      } finally {
        for (const source of sources) {
          source.dispose();
        }
      }
    }
    // Native trees are let go in a turn of the event loop of their own: without one, a folder of sketches piles up.
    await new Promise<void>((resolve) => setImmediate(resolve));
    return { sketch, checked, findings, problems, notes: project.notes, looked: [...looked] };
  };
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function placeFindings(
  snapshot: Snapshot,
  project: ProjectFiles,
  sketch: string,
  nameOf: (file: string) => string,
): readonly ReportFinding[] {
  const texts = new Map(
    [...project.sources, ...(project.manifest === undefined ? [] : [project.manifest])].map(
      ({ file, text }) => [file, text],
    ),
  );
  const indexes = new Map<string, LineIndex>();
  const place = (span: Span) => {
    const lines = indexes.get(span.file) ?? new LineIndex(texts.get(span.file) ?? '');
    indexes.set(span.file, lines);
    return {
      file: nameOf(span.file),
      range: { start: lines.placeOf(span.start), end: lines.placeOf(span.end) },
    };
  };
  return snapshot.findings.map((finding: Finding) => {
    const { rule, key, severity, message, fixes } = finding;
    return {
      rule,
      key,
      sketch,
      severity,
      message,
      ...place(finding.span),
      related: finding.related.map((other) => ({ message: other.message, ...place(other.span) })),
      fixes: fixes.map((fix) => fix.title),
      ask: fixes.filter((fix) => fix.trust === 'ask').map((fix) => fix.title),
    };
  });
}
