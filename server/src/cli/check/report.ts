/**
 * What a check found, as plain data: the one thing that every format prints, that shards hand over and that a merge puts
 * together again. As JSON it is the program's promise to other programs; hardware-schemas/check-report.schema.json
 * describes it. `format` grows when a key changes its meaning or goes; keys may come.
 */
import type { Severity } from '../../base/finding';
import { compareText, type FileProblem, type Product } from '../../files';
import type { Place } from '../print/lines';

/** Zero-based, half-open, in UTF-16 units, as the Language Server Protocol counts. */
export interface PlaceRange {
  readonly start: Place;
  readonly end: Place;
}

/** A second place that belongs to a finding. */
export interface ReportRelated {
  readonly message: string;
  /** Relative to the current folder of the run, with forward slashes. */
  readonly file: string;
  readonly range: PlaceRange;
}

/** One thing that is wrong. */
export interface ReportFinding {
  readonly rule: string;
  /** Rule and stable identity of the pin or part; unique within the sketch, and the same after edits elsewhere. */
  readonly key: string;
  /** Folder of the sketch, relative to the current folder of the run. */
  readonly sketch: string;
  readonly severity: Severity;
  readonly message: string;
  readonly file: string;
  readonly range: PlaceRange;
  readonly related: readonly ReportRelated[];
  /** Titles. */
  readonly fixes: readonly string[];
  /** Those of the titles that change what somebody solders or what the firmware does. */
  readonly ask: readonly string[];
}

/** The whole of a run. */
export interface Report {
  readonly format: 1;
  readonly tool: { readonly name: string; readonly version: string };
  /** Which part of the sketches this is, as `3/8`; absent where it is all of them. */
  readonly shard?: string;
  /** Folders that were checked to the end, ordered. */
  readonly sketches: readonly string[];
  /** Ordered by file, place, rule and key. */
  readonly findings: readonly ReportFinding[];
  readonly problems: readonly FileProblem[];
  /** What a bound left out, in whole sentences. */
  readonly notes: readonly string[];
  /** Where a baseline was given: its findings that were found again and are not listed, and those that are gone. */
  readonly baseline?: { readonly known: number; readonly gone: number };
  readonly summary: {
    readonly sketches: number;
    readonly errors: number;
    readonly warnings: number;
    readonly informations: number;
    readonly hints: number;
  };
}

/** The pieces a report is made of, in any order. */
export type ReportPieces = Omit<Report, 'format' | 'summary'>;

/** Puts the pieces in order and counts them. */
export function makeReport(pieces: ReportPieces): Report {
  const { tool, shard, baseline } = pieces;
  const findings = [...pieces.findings].sort(compareFindings);
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  const sketches = [...new Set(pieces.sketches)].sort(compareText);
  return {
    format: 1,
    tool,
    ...(shard === undefined ? {} : { shard }),
    sketches,
    findings,
    problems: orderProblems(pieces.problems),
    notes: [...new Set(pieces.notes)].sort(compareText),
    ...(baseline === undefined ? {} : { baseline }),
    summary: {
      sketches: sketches.length,
      errors: count('error'),
      warnings: count('warning'),
      informations: count('information'),
      hints: count('hint'),
    },
  };
}

/** Every shard meets what could not be read on the way to the sketches: each is told once. */
function orderProblems(problems: readonly FileProblem[]): readonly FileProblem[] {
  const once = new Map(problems.map(({ path, why }) => [`${path}\n${why}`, { path, why }]));
  return [...once.values()].sort((a, b) => compareText(a.path, b.path) || compareText(a.why, b.why));
}

function compareFindings(a: ReportFinding, b: ReportFinding): number {
  return (
    compareText(a.file, b.file) ||
    comparePlaces(a.range.start, b.range.start) ||
    comparePlaces(a.range.end, b.range.end) ||
    compareText(a.rule, b.rule) ||
    compareText(a.key, b.key) ||
    compareText(a.sketch, b.sketch)
  );
}

function comparePlaces(a: Place, b: Place): number {
  return a.line - b.line || a.character - b.character;
}

/** 2: something could not be checked. 1: an error or a warning. 0: neither. */
export function exitCodeOf({ problems, summary }: Report): number {
  return problems.length > 0 ? 2 : summary.errors + summary.warnings > 0 ? 1 : 0;
}

/** The part of a product that a report names. */
export function toolOf({ name, version }: Product): Report['tool'] {
  return { name, version };
}
