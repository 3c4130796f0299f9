/**
 * Runs the rules over a subject. A rule that throws is caught and told; the others go on. Severities are the rule's,
 * then the case's, then the user's.
 */
import type { Finding, Fix, Severity } from '../base/finding';
import type { Rule } from '../rules/rule';
import type { Subject } from '../rules/subject';

export interface RuleFault {
  readonly rule: string;
  readonly error: unknown;
}

/** What running the rules gives. Fixes are made by key, when somebody asks. */
export interface RuleResults {
  readonly findings: readonly Finding[];
  readonly faults: readonly RuleFault[];
  fixesOf(key: string): readonly Fix[];
}

/** Says whether a fix may be offered for a finding. */
export type Approve = (fix: Fix, rule: Rule, key: string) => boolean;

export function runRules(
  rules: readonly Rule[],
  subject: Subject,
  approve: Approve = () => true,
): RuleResults {
  const doubtful = new Set(subject.doubtful);
  const findings: Finding[] = [];
  const faults: RuleFault[] = [];
  const makers = new Map<string, () => readonly Fix[]>();
  for (const rule of rules) {
    try {
      const wish = subject.build.severity[rule.id];
      if (wish === 'off') continue;
      const taken = new Map<string, number>();
      for (const hit of rule.check(subject)) {
        if (rule.needs !== 'reading' && doubtful.has(hit.identity)) continue;
        const severity: Severity = wish ?? hit.severity ?? rule.severity;
        // One pin can have the same fault twice; the second and later ones are counted, so that keys stay apart.
        const count = (taken.get(hit.identity) ?? 0) + 1;
        taken.set(hit.identity, count);
        const key = `${rule.id}:${hit.identity}${count > 1 ? `#${count}` : ''}`;
        const make = () => (rule.fixes?.(hit.detail, subject) ?? []).filter((fix) => approve(fix, rule, key));
        makers.set(key, make);
        let titles: Finding['fixes'] | undefined;
        findings.push({
          rule: rule.id,
          key,
          severity,
          message: rule.message(hit.detail),
          span: hit.span,
          related: hit.related ?? [],
          // Making a repair reads the manifest's layout; while somebody types, nobody looks at the titles.
          get fixes() {
            titles ??= make().map(({ title, trust }) => ({ title, trust }));
            return titles;
          },
        });
      }
    } catch (error) {
      faults.push({ rule: rule.id, error });
    }
  }
  findings.sort(byPlace);
  return { findings, faults, fixesOf: (key) => makers.get(key)?.() ?? [] };
}

/** Orders findings by file, place and rule: the same input gives the same list. */
export function byPlace(a: Finding, b: Finding): number {
  return (
    compare(a.span.file, b.span.file) ||
    a.span.start - b.span.start ||
    compare(a.rule, b.rule) ||
    compare(a.key, b.key)
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
