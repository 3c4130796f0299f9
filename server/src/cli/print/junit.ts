/**
 * A report as JUnit XML, which build servers show as tests: a suite for every sketch, a case for every finding, and one
 * that passes where a sketch has none. There is no standard of it; these are the elements and attributes that are
 * read everywhere (common practice).
 */
import type { Report, ReportFinding } from '../check/report';

/** One XML document. */
export function printJunit(report: Report): string {
  const bySketch = new Map<string, ReportFinding[]>(report.sketches.map((sketch) => [sketch, []]));
  for (const finding of report.findings) {
    const findings = bySketch.get(finding.sketch) ?? [];
    findings.push(finding);
    bySketch.set(finding.sketch, findings);
  }
  const suites = [...bySketch].map(([sketch, findings]) => suiteOf(sketch, findings));
  if (report.problems.length > 0) {
    const cases = report.problems.map(({ path, why }) => [
      `    <testcase classname="not checked" name=${quoted(path)}>`,
      `      <error type="not checked" message=${quoted(`${path}: ${why}`)}/>`,
      '    </testcase>',
    ]);
    suites.push({ name: 'not checked', cases, failures: 0, errors: cases.length });
  }
  const sum = (of: (suite: Suite) => number) => suites.reduce((total, suite) => total + of(suite), 0);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name=${quoted(report.tool.name)} tests="${sum(({ cases }) => cases.length)}" failures="${sum(({ failures }) => failures)}" errors="${sum(({ errors }) => errors)}">`,
    ...suites.flatMap(({ name, cases, failures, errors }) => [
      `  <testsuite name=${quoted(name)} tests="${cases.length}" failures="${failures}" errors="${errors}" skipped="0">`,
      ...cases.flat(),
      '  </testsuite>',
    ]),
    '</testsuites>',
    '',
  ].join('\n');
}

interface Suite {
  readonly name: string;
  readonly cases: readonly (readonly string[])[];
  readonly failures: number;
  readonly errors: number;
}

function suiteOf(sketch: string, findings: readonly ReportFinding[]): Suite {
  const clean = [`    <testcase classname=${quoted(sketch)} name="no findings"/>`];
  return {
    name: sketch,
    cases: findings.length === 0 ? [clean] : findings.map(caseOf),
    failures: findings.filter(fails).length,
    errors: 0,
  };
}

/** As with the exit code: information and hints are told and fail nothing. */
function fails({ severity }: ReportFinding): boolean {
  return severity === 'error' || severity === 'warning';
}

function caseOf(finding: ReportFinding): readonly string[] {
  const { rule, key, sketch, severity, message } = finding;
  const place = (at: Pick<ReportFinding, 'file' | 'range'>) =>
    `${at.file}:${at.range.start.line + 1}:${at.range.start.character + 1}`;
  const told = [
    `${place(finding)} ${severity} ${rule}`,
    message,
    ...finding.related.map((other) => `see ${place(other)} ${other.message}`),
    ...finding.fixes.map((title) => `${finding.ask.includes(title) ? 'fix (ask)' : 'fix'}: ${title}`),
  ].join('\n');
  const body = fails(finding)
    ? `      <failure type=${quoted(rule)} message=${quoted(message)}>${escapeXml(told)}</failure>`
    : `      <system-out>${escapeXml(told)}</system-out>`;
  return [
    `    <testcase classname=${quoted(sketch)} name=${quoted(key)} file=${quoted(finding.file)} line="${finding.range.start.line + 1}">`,
    body,
    '    </testcase>',
  ];
}

function quoted(text: string): string {
  // A line end in an attribute would be read as a blank.
  return `"${escapeXml(text).replaceAll('"', '&quot;').replaceAll('\n', '&#10;').replaceAll('\t', '&#9;')}"`;
}

/** Characters that XML 1.0 has no way to say (section 2.2, from memory) become U+FFFD. */
function escapeXml(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('\r', '&#13;');
}
