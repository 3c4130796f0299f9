/** A recipe while it is put together: parts, wires and the rails that it takes. */
import { insertPart, insertWire } from '../../../hardware';
import type { Subject } from '../../subject';
import type { Step } from '../draft';
import { nextName } from '../manifest-edits';
import { Rails } from './rails';

export interface Recipe {
  /** "a lamp on D7 with 330 ohm to GND@left.14". */
  readonly title: string;
  readonly steps: readonly Step[];
  /** Part ids with the kind each has, the guessed one first; the others are there for its sake. */
  readonly parts: readonly { readonly id: string; readonly kind: string }[];
  /** It takes its supply from the board, which may have another that does. */
  readonly fed: boolean;
}

export class RecipeDraft {
  readonly steps: Step[] = [];
  readonly parts: { readonly id: string; readonly kind: string }[] = [];
  readonly rails: Rails;
  fed = false;
  readonly #taken: Set<string>;

  constructor(
    readonly subject: Subject,
    supply: number,
  ) {
    this.rails = new Rails(subject, supply);
    this.#taken = new Set(subject.build.parts.map((part) => part.id));
  }

  /** Adds a part and gives its id. */
  part(id: string, entry: Readonly<Record<string, string | boolean>> & { readonly kind: string }): string {
    this.#taken.add(id);
    this.parts.push({ id, kind: entry.kind });
    this.steps.push((text, file) => insertPart(text, id, entry, file));
    return id;
  }

  wire(entry: Parameters<typeof insertWire>[1]) {
    this.steps.push((text, file) => insertWire(text, entry, file));
  }

  next(prefix: string): string {
    for (let count = 1; ; count += 1) {
      const id = nextName(this.subject, prefix);
      const number = Number(id.slice(prefix.length)) + count - 1;
      if (!this.#taken.has(`${prefix}${number}`)) return `${prefix}${number}`;
    }
  }

  done(title: string): Recipe {
    return { title, steps: this.steps, parts: this.parts, fed: this.fed };
  }
}
