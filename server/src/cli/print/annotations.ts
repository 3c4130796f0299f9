/**
 * A report as annotation lines: commands in the log of a hosted build, `::warning file=...,line=...::message`, that the
 * host shows at the line of a change. The escapes are those of that convention (from memory): per cent, line ends, and in
 * properties colon and comma too, so that no message can begin a command of its own.
 */
import type { Severity } from '../../base/finding';
import type { Report } from '../check/report';

const COMMANDS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'notice',
  hint: 'notice',
};

/** One line a finding, then one a problem, then one a note. Nothing where there is nothing to say. */
export function printAnnotations(report: Report): string {
  const lines = report.findings.map(({ severity, file, range, rule, message, related, fixes }) => {
    const { start, end } = range;
    const properties = {
      file,
      line: String(start.line + 1),
      endLine: String(end.line + 1),
      col: String(start.character + 1),
      endColumn: String(end.character + 1),
      title: rule,
    };
    const told = [
      message,
      ...related.map((other) => `see ${other.file}:${other.range.start.line + 1} ${other.message}`),
      ...fixes.map((title) => `fix: ${title}`),
    ].join('\n');
    return commandOf(COMMANDS[severity], properties, told);
  });
  const problems = report.problems.map(({ path, why }) =>
    commandOf('error', { file: path, title: 'not checked' }, `${path}: ${why}`),
  );
  const notes = report.notes.map((note) => commandOf('notice', { title: 'not searched' }, note));
  return [...lines, ...problems, ...notes].map((line) => `${line}\n`).join('');
}

function commandOf(command: string, properties: Readonly<Record<string, string>>, text: string): string {
  const said = Object.entries(properties).map(([name, value]) => `${name}=${escapeProperty(value)}`);
  return `::${command} ${said.join(',')}::${escapeText(text)}`;
}

function escapeText(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapeProperty(text: string): string {
  return escapeText(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
