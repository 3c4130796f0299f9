/** Offsets to lines and columns. LF, CRLF and a lone CR end a line, as in the Language Server Protocol. */

/** Zero-based line, and UTF-16 units from its beginning. */
export interface Place {
  readonly line: number;
  readonly character: number;
}

/** Where the lines of one text begin. */
export class LineIndex {
  readonly #starts: readonly number[];

  constructor(readonly text: string) {
    const starts = [0];
    for (let at = 0; at < text.length; at += 1) {
      const unit = text.charCodeAt(at);
      if (unit === 13 && text.charCodeAt(at + 1) === 10) {
        at += 1;
      }
      if (unit === 10 || unit === 13) {
        starts.push(at + 1);
      }
    }
    this.#starts = starts;
  }

  /** The place of an offset; one outside the text counts as its nearest end. */
  placeOf(offset: number): Place {
    const at = Math.max(0, Math.min(offset, this.text.length));
    let low = 0;
    let high = this.#starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.#starts[middle] ?? 0) <= at) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return { line: low, character: at - (this.#starts[low] ?? 0) };
  }

  /** The offset of a place; one behind its line's end or behind the text counts as that end. */
  offsetOf({ line, character }: Place): number {
    const start = this.#starts[line];
    return start === undefined
      ? this.text.length
      : Math.min(start + character, this.#starts[line + 1] ?? this.text.length);
  }

  /** Offsets of a line's first unit and of the unit behind its last, without its line end. */
  boundsOf(line: number): { readonly start: number; readonly end: number } {
    const start = this.#starts[line] ?? this.text.length;
    let end = this.#starts[line + 1] ?? this.text.length;
    while (end > start && (this.text[end - 1] === '\n' || this.text[end - 1] === '\r')) {
      end -= 1;
    }
    return { start, end };
  }
}
