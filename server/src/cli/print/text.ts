/** Findings for a person at a terminal: place, figure, the line itself, what else belongs to it, the way out. */
import type { Severity } from '../../base/finding';
import type { Report, ReportFinding, ReportRelated } from '../check/report';
import { drawExcerpt, harmless } from './excerpt';
import type { LineIndex } from './lines';
import { type Colour, type Paint, painterOf, type TextStyle } from './paint';

type Placed = Pick<ReportRelated, 'file' | 'range'>;

const SEVERITY_COLOURS: Readonly<Record<Severity, Colour>> = {
  error: 'red',
  warning: 'yellow',
  information: 'blue',
  hint: 'cyan',
};
/** Narrower than this an excerpt says nothing any more. */
const LEAST_COLUMNS = 24;

/** Lines of a file that a finding lies in; undefined where it cannot be read any more. */
export type LinesOf = (file: string) => LineIndex | undefined;

/** The whole output of a run, ending with the summary line. */
export function printText(report: Report, linesOf: LinesOf, style: TextStyle): string {
  const paint = painterOf(style);
  const blocks = report.findings.map((finding) => printFinding(finding, linesOf, style, paint).join('\n'));
  return `${[...blocks, summarise(report)].join('\n\n')}\n`;
}

function printFinding(
  finding: ReportFinding,
  linesOf: LinesOf,
  style: TextStyle,
  paint: Paint,
): readonly string[] {
  const colour = SEVERITY_COLOURS[finding.severity];
  const excerptOf = ({ file, range }: Placed, markerColour: Colour): readonly string[] => {
    const lines = linesOf(file);
    if (lines === undefined) {
      return [];
    }
    const number = String(range.start.line + 1).padStart(5);
    const columns = Math.max(LEAST_COLUMNS, style.columns - number.length - 3);
    const drawn = drawExcerpt(lines, lines.offsetOf(range.start), lines.offsetOf(range.end), columns);
    return [
      `${paint('dim', `${number} |`)} ${drawn.source}`.trimEnd(),
      `${paint('dim', `${' '.repeat(number.length)} |`)} ${paint(markerColour, drawn.marker)}`,
    ];
  };
  const place = ({ file, range }: Placed) =>
    harmless(`${file}:${range.start.line + 1}:${range.start.character + 1}`);
  return [
    `${paint('bold', place(finding))} ${paint(colour, finding.severity)} ${finding.rule}`,
    `  ${harmless(finding.message)}`,
    ...excerptOf(finding, colour),
    ...finding.related.flatMap((other) => [
      `  see ${place(other)} ${harmless(other.message)}`,
      ...excerptOf(other, 'blue'),
    ]),
    ...finding.fixes.map(
      (title) =>
        `  ${paint('green', finding.ask.includes(title) ? 'fix (ask):' : 'fix:')} ${harmless(title)}`,
    ),
  ];
}

/** "3 errors, 2 warnings in 1 sketch". */
export function summarise({ summary, baseline }: Report): string {
  const said = [
    count(summary.errors, 'error', 'errors'),
    count(summary.warnings, 'warning', 'warnings'),
    count(summary.informations, 'information', 'informations'),
    count(summary.hints, 'hint', 'hints'),
  ].filter((part) => part !== undefined);
  const sketches = `${summary.sketches} ${summary.sketches === 1 ? 'sketch' : 'sketches'}`;
  const lines = [`${said.length === 0 ? 'No findings' : said.join(', ')} in ${sketches}`];
  if (baseline !== undefined) {
    const { known, gone } = baseline;
    lines.push(
      `${count(known, 'finding is', 'findings are') ?? 'No findings are'} in the baseline and not shown`,
    );
    if (gone > 0) {
      lines.push(
        `${count(gone, 'finding', 'findings')} of the baseline ${gone === 1 ? 'is' : 'are'} gone: write it anew`,
      );
    }
  }
  return lines.join('\n');
}

function count(amount: number, one: string, many: string): string | undefined {
  return amount === 0 ? undefined : `${amount} ${amount === 1 ? one : many}`;
}
