/**
 * A report as SARIF, for every tool that gathers findings.
 * Source: Static Analysis Results Interchange Format (SARIF) Version 2.1.0, OASIS Standard, 27 March 2020. Lines and
 * columns count from 1 there (3.30.5 and following), columns here in UTF-16 units, which `columnKind` says.
 */
import type { Severity } from '../../base/finding';
import type { Rule } from '../../rules/rule';
import type { PlaceRange, Report, ReportFinding } from '../check/report';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json';

/** 3.27.10: a `note` does not demand anything. */
const LEVELS: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = {
  error: 'error',
  warning: 'warning',
  information: 'note',
  hint: 'note',
};

type RuleFacts = Pick<Rule, 'id' | 'title' | 'why' | 'source' | 'severity'>;

/** One SARIF log with one run. The same report gives the same text: it holds neither times nor absolute paths. */
export function printSarif(report: Report, rules: readonly RuleFacts[]): string {
  const indexes = new Map(rules.map((rule, index) => [rule.id, index]));
  const { tool, problems, notes } = report;
  const log = {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: tool.name,
            version: tool.version,
            semanticVersion: tool.version,
            rules: rules.map(describeRule),
          },
        },
        invocations: [
          {
            executionSuccessful: problems.length === 0,
            toolExecutionNotifications: [
              ...problems.map(({ path, why }) => ({
                level: 'error',
                message: { text: `${path}: ${why}` },
                locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(path) } } }],
              })),
              ...notes.map((note) => ({ level: 'note', message: { text: note } })),
            ],
          },
        ],
        columnKind: 'utf16CodeUnits',
        results: report.findings.map((finding) => describeFinding(finding, indexes.get(finding.rule))),
      },
    ],
  };
  return `${JSON.stringify(log, undefined, 2)}\n`;
}

function describeRule({ id, title, why, source, severity }: RuleFacts) {
  return {
    id,
    shortDescription: { text: title },
    fullDescription: { text: why },
    help: { text: `${why}\n\nSource: ${source}` },
    defaultConfiguration: { level: LEVELS[severity] },
  };
}

function describeFinding(finding: ReportFinding, index: number | undefined) {
  const { rule, severity, message, sketch, key, fixes } = finding;
  return {
    ruleId: rule,
    ...(index === undefined ? {} : { ruleIndex: index }),
    level: LEVELS[severity],
    message: { text: message },
    locations: [{ physicalLocation: describePlace(finding) }],
    ...(finding.related.length === 0
      ? {}
      : {
          relatedLocations: finding.related.map((other, id) => ({
            id,
            physicalLocation: describePlace(other),
            message: { text: other.message },
          })),
        }),
    // 3.27.17: what tells this result from others and stays the same from run to run.
    partialFingerprints: { 'sketchAndKey/v1': `${sketch} ${key}` },
    ...(fixes.length === 0 ? {} : { properties: { fixes } }),
  };
}

function describePlace({ file, range }: { readonly file: string; readonly range: PlaceRange }) {
  const { start, end } = range;
  return {
    artifactLocation: { uri: uriOf(file) },
    region: {
      startLine: start.line + 1,
      startColumn: start.character + 1,
      endLine: end.line + 1,
      endColumn: end.character + 1,
    },
  };
}

/** A relative path as a relative reference of RFC 3986; a colon in the first step would read as a scheme. */
function uriOf(path: string): string {
  const steps = path.split('/').map((step) => encodeURIComponent(step.replace(/\p{Cs}/gu, '\ufffd')));
  return steps.join('/');
}
