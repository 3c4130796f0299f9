/** Leaves out the findings that a remark with a reason lets be, and tells the remarks that let nothing be. */
import type { Finding } from '../base/finding';
import { findOkRemarks } from '../base/ok-remark';
import type { Subject } from '../rules/subject';
import { byPlace } from './run-rules';

const ownRule = 'ok-remark';

export function heedRemarks(subject: Subject, findings: readonly Finding[]): readonly Finding[] {
  const remarks = Object.entries(subject.texts)
    .flatMap(([file, text]) => findOkRemarks(file, text))
    .filter(({ because }) => because !== undefined);
  if (remarks.length === 0) return findings;
  const used = new Set<(typeof remarks)[number]>();
  const left = findings.filter(({ rule, span }) => {
    const holds = remarks.filter(
      (remark) =>
        remark.rule === rule &&
        remark.line.file === span.file &&
        remark.line.start <= span.start &&
        span.start <= remark.line.end,
    );
    for (const remark of holds) used.add(remark);
    return holds.length === 0;
  });
  const wish = subject.build.severity[ownRule];
  if (wish === 'off') return left;
  const idle = remarks
    .filter((remark) => !used.has(remark))
    .map(
      ({ rule, span }): Finding => ({
        rule: ownRule,
        key: `${ownRule}:${rule}@${span.file}:${span.start}`,
        severity: wish ?? 'warning',
        message: `${rule} finds nothing here: take the remark out.`,
        span,
        related: [],
        fixes: [],
      }),
    );
  return [...left, ...idle].sort(byPlace);
}
