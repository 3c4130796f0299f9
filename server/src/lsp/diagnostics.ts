/** Findings as the protocol's diagnostics, grouped by file. */
import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import type { Finding, Severity } from '../base/finding';
import type { Span } from '../base/span';
import type { Features } from './features';
import { rangeOf } from './places';
import type { Run } from './project';
import { nameOf, uriOfPath } from './uris';

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** What a diagnostic carries so that its finding is known again. */
export interface DiagnosticData {
  readonly key: string;
}

/**
 * The diagnostics of a run by path. Every open file of it has a list, so that an editor learns that it is clean; of the
 * others only those with findings. A finding in a file that the run did not read is left out: it has no lines.
 */
export function diagnosticsOf(
  run: Run,
  features: Features,
  rulePages: string | undefined,
): ReadonlyMap<string, readonly Diagnostic[]> {
  const lists = new Map<string, Diagnostic[]>();
  for (const [path, file] of run.files) {
    if (file.open !== undefined) {
      lists.set(path, []);
    }
  }
  for (const finding of run.snapshot.findings) {
    const diagnostic = toDiagnostic(finding, run, features, rulePages);
    if (diagnostic === undefined) {
      continue;
    }
    const list = lists.get(finding.span.file);
    if (list === undefined) {
      lists.set(finding.span.file, [diagnostic]);
    } else {
      list.push(diagnostic);
    }
  }
  return lists;
}

function toDiagnostic(
  finding: Finding,
  run: Run,
  features: Features,
  rulePages: string | undefined,
): Diagnostic | undefined {
  const file = run.files.get(finding.span.file);
  if (file === undefined) {
    return undefined;
  }
  const data: DiagnosticData = { key: finding.key };
  const diagnostic: Diagnostic = {
    range: rangeOf(file.lines, finding.span),
    severity: severities[finding.severity],
    code: finding.rule,
    source: 'wiretrue',
    message: finding.message,
    data,
  };
  if (features.codeDescription && rulePages !== undefined) {
    diagnostic.codeDescription = { href: `${rulePages.replace(/\/$/, '')}/${finding.rule}` };
  }
  if (features.relatedPlaces) {
    diagnostic.relatedInformation = finding.related.flatMap(({ message, span }) => {
      const location = locationOf(span, run);
      return location === undefined ? [] : [{ message, location }];
    });
  } else if (finding.related.length > 0) {
    diagnostic.message += finding.related
      .map((related) => inWords(related.message, related.span, run))
      .join('');
  }
  return diagnostic;
}

/** A span as the protocol's location; undefined where the run did not read its file. */
export function locationOf(span: Span, run: Run) {
  const file = run.files.get(span.file);
  return file && { uri: file.open?.uri ?? uriOfPath(span.file), range: rangeOf(file.lines, span) };
}

/** For a client that shows no related places: one line each under the message. */
function inWords(message: string, span: Span, run: Run): string {
  const line = run.files.get(span.file)?.lines.positionAt(span.start).line;
  return line === undefined ? '' : `\n${message} (${nameOf(span.file)}, line ${line + 1})`;
}

/** The key that a diagnostic from the client carries, if it is one of ours. */
export function keyOf(diagnostic: Diagnostic): string | undefined {
  const data: unknown = diagnostic.data;
  return typeof data === 'object' && data !== null && 'key' in data && typeof data.key === 'string'
    ? data.key
    : undefined;
}
