/** Findings for programs. The shape is a promise: `format` grows when a key changes its meaning or goes. */
import type { Span } from '../base/span';
import type { Product } from '../files';
import type { CheckResult } from './check-builds';

/** One JSON object and a line end. */
export function printJson(result: CheckResult, product: Product): string {
  const place = (span: Span) => {
    const lines = result.linesOf(span.file);
    const range = { start: lines.placeOf(span.start), end: lines.placeOf(span.end) };
    return { file: result.nameOf(span.file), range };
  };
  const { error, warning, information, hint } = result.counts;
  const output = {
    format: 1,
    tool: { name: product.name, version: product.version },
    findings: result.findings.map((finding) => ({
      rule: finding.rule,
      severity: finding.severity,
      message: finding.message,
      ...place(finding.span),
      related: finding.related.map((other) => ({ message: other.message, ...place(other.span) })),
      fixes: finding.fixes.map((fix) => fix.title),
    })),
    problems: result.problems.map(({ path, why }) => ({ path, why })),
    summary: {
      sketches: result.sketches,
      errors: error,
      warnings: warning,
      informations: information,
      hints: hint,
    },
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}
