/** What the rules say: the boundary type between rules/ and everything that shows findings. */
import type { Edit, Span } from './span';

/** By consequence: error damages something or cannot work; warning works by luck; the rest are habits. */
export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** A second place that belongs to a finding, most often in the other file. */
export interface Related {
  readonly message: string;
  readonly span: Span;
}

/** `safe` leaves the built thing as it is; `ask` changes what somebody solders or what the firmware does. */
export type Trust = 'safe' | 'ask';

/** A repair. Edits may lie in several files and never overlap. */
export interface Fix {
  /** Names the effect, as in "Put a 330 ohm resistor into the wire of beacon". */
  readonly title: string;
  readonly trust: Trust;
  readonly edits: readonly Edit[];
}

/** One thing that is wrong. */
export interface Finding {
  /** The rule's id. */
  readonly rule: string;
  /** Rule and stable identity of the pin or part: survives edits elsewhere, so an editor can ask for its fixes. */
  readonly key: string;
  readonly severity: Severity;
  readonly message: string;
  readonly span: Span;
  readonly related: readonly Related[];
  /** Titles only: the edits are made when one is chosen. */
  readonly fixes: readonly { readonly title: string; readonly trust: Trust }[];
}
