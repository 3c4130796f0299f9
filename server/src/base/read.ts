/**
 * What every reader of user text returns. No reader throws on user text: a wrong place becomes a problem and the
 * rest of the file still counts.
 */
import type { Edit, Span } from './span';

/** One thing that is wrong with a text, where it is, and the way out. */
export interface Problem {
  /** kebab-case name of what is wrong, as in `unknown-part`. */
  readonly code: string;
  /** A whole sentence that says what is wrong. */
  readonly message: string;
  readonly span: Span;
  /** A whole sentence that says what to do. */
  readonly hint?: string;
  /** A replacement that puts it right (as for a mistyped name), with a title that names the effect. */
  readonly fix?: { readonly title: string; readonly edits: readonly Edit[] };
}

/** A value, as far as it could be read, and what was wrong on the way. */
export interface Read<T> {
  readonly value: T;
  readonly problems: readonly Problem[];
}
