/** Findings for a person at a terminal: place, figure, the line itself, what else belongs to it, the way out. */
import type { Finding, Severity } from '../base/finding';
import type { Span } from '../base/span';
import type { CheckResult } from './check-builds';
import { drawExcerpt, harmless } from './excerpt';

/** How the terminal wants it. */
export interface TextStyle {
  readonly colours: boolean;
  /** Columns of the terminal. */
  readonly columns: number;
}

/** Select Graphic Rendition codes, ECMA-48 section 8.3.117. */
const CODES = { bold: 1, dim: 2, red: 31, green: 32, yellow: 33, blue: 34, cyan: 36 } as const;
type Colour = keyof typeof CODES;

const SEVERITY_COLOURS: Readonly<Record<Severity, Colour>> = {
  error: 'red',
  warning: 'yellow',
  information: 'blue',
  hint: 'cyan',
};
/** Narrower than this an excerpt says nothing any more. */
const LEAST_COLUMNS = 24;

/** The whole output of a run, ending with the summary line. */
export function printText(result: CheckResult, style: TextStyle): string {
  const paint = (colour: Colour, text: string) =>
    style.colours ? `\u001b[${CODES[colour]}m${text}\u001b[0m` : text;
  const blocks = result.findings.map((finding) => printFinding(finding, result, style, paint).join('\n'));
  return `${[...blocks, summarise(result)].join('\n\n')}\n`;
}

function printFinding(
  finding: Finding,
  result: CheckResult,
  style: TextStyle,
  paint: (colour: Colour, text: string) => string,
): readonly string[] {
  const colour = SEVERITY_COLOURS[finding.severity];
  const excerptOf = (span: Span, markerColour: Colour): readonly string[] => {
    const lines = result.linesOf(span.file);
    const number = String(lines.placeOf(span.start).line + 1).padStart(5);
    const columns = Math.max(LEAST_COLUMNS, style.columns - number.length - 3);
    const drawn = drawExcerpt(lines, span.start, span.end, columns);
    return [
      `${paint('dim', `${number} |`)} ${drawn.source}`.trimEnd(),
      `${paint('dim', `${' '.repeat(number.length)} |`)} ${paint(markerColour, drawn.marker)}`,
    ];
  };
  const place = (span: Span) => {
    const { line, character } = result.linesOf(span.file).placeOf(span.start);
    return harmless(`${result.nameOf(span.file)}:${line + 1}:${character + 1}`);
  };
  return [
    `${paint('bold', place(finding.span))} ${paint(colour, finding.severity)} ${finding.rule}`,
    `  ${harmless(finding.message)}`,
    ...excerptOf(finding.span, colour),
    ...finding.related.flatMap((other) => [
      `  see ${place(other.span)} ${harmless(other.message)}`,
      ...excerptOf(other.span, 'blue'),
    ]),
    ...finding.fixes.map(
      (fix) => `  ${paint('green', fix.trust === 'ask' ? 'fix (ask):' : 'fix:')} ${harmless(fix.title)}`,
    ),
  ];
}

/** "3 errors, 2 warnings in 1 sketch". */
export function summarise(result: CheckResult): string {
  const { error, warning, information, hint } = result.counts;
  const said = [
    count(error, 'error', 'errors'),
    count(warning, 'warning', 'warnings'),
    count(information, 'information', 'informations'),
    count(hint, 'hint', 'hints'),
  ].filter((part) => part !== undefined);
  const sketches = `${result.sketches} ${result.sketches === 1 ? 'sketch' : 'sketches'}`;
  return `${said.length === 0 ? 'No findings' : said.join(', ')} in ${sketches}`;
}

function count(amount: number, one: string, many: string): string | undefined {
  return amount === 0 ? undefined : `${amount} ${amount === 1 ? one : many}`;
}
