/**
 * The type of a rule. A rule is one file that exports one object: from it come the check, the fixes, the tests, the
 * documentation page and the list of ids. The registry, the pages and the schema of severities are generated from
 * the folder listing, so nothing else is edited when a rule is added.
 */
import type { Fix, Related, Severity } from '../base/finding';
import type { Span } from '../base/span';
import type { Subject } from './subject';

/** One place where a rule's fault is, with the typed facts that word it and repair it. */
export interface Hit<Detail> {
  /** Stable identity of the pin, part or wire within the rule: `D7`, `beacon`. Makes the finding's key. */
  readonly identity: string;
  readonly span: Span;
  readonly related?: readonly Related[];
  /** Where this case weighs differently from the rule's own severity. */
  readonly severity?: Severity;
  readonly detail: Detail;
}

/** A marked-up build that shows the rule, and the build after its fix. See test/fixture/README.md for the marks. */
export interface Example {
  /** One phrase: what the case shows. */
  readonly about: string;
  readonly build: string;
  /** Files after the fix, those that changed; absent where the example has no fix to show. */
  readonly fixed?: string;
  /** Title of the fix that leads to `fixed`, where it is not the first of the first mark. */
  readonly fix?: string;
}

export interface Rule<Detail = unknown> {
  /** The file's name: states what is wrong, in kebab-case. */
  readonly id: string;
  /** One sentence. */
  readonly title: string;
  /** What it costs. */
  readonly why: string;
  /** Document and clause, or "common practice". */
  readonly source: string;
  readonly severity: Severity;
  readonly maturity: 'new' | 'settled';
  /** What the check reads; `reading` runs even where no build could be read. Rules without a circuit can run first. */
  readonly needs: 'reading' | 'sketch' | 'hardware' | 'circuit';
  check(subject: Subject): Iterable<Hit<Detail>>;
  message(detail: Detail): string;
  /** Made only when somebody asks. Alternatives, the likeliest first. */
  fixes?(detail: Detail, subject: Subject): readonly Fix[];
  readonly examples: readonly Example[];
}

/** Gives a rule's detail its type; the registry holds them all as `Rule`. */
export function defineRule<Detail>(rule: Rule<Detail>): Rule<Detail> {
  return rule;
}
