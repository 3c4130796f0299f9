/** What mending changes in a text, and the way back from the mended text to the text as written. */

/** Blanks `length` characters at `at`, or puts `text` there: characters in place of as many, or between two. */
export interface Patch {
  readonly at: number;
  /** Characters replaced, by `text` of the same length; zero for an insertion. */
  readonly length: number;
  readonly text: string;
}

export class Mended {
  /** Ends of the insertions in the mended text, and the characters inserted up to there. */
  private readonly ends: number[] = [];
  private readonly sums: number[] = [];

  private constructor(
    readonly text: string,
    private readonly patches: readonly Patch[],
    /** Names followed by a bracket in text that is kept from the grammar though it may be meant as code. */
    readonly lost: readonly string[],
  ) {}

  static of(text: string, patches: readonly Patch[], lost: readonly string[]): Mended {
    if (patches.length === 0) return new Mended(text, patches, lost);
    const sorted = [...patches].sort((a, b) => a.at - b.at);
    let whole = '';
    let at = 0;
    const insertions: { readonly end: number; readonly length: number }[] = [];
    for (const patch of sorted) {
      whole += text.slice(at, patch.at);
      at = Math.max(at, patch.at);
      if (patch.length === 0) {
        whole += patch.text;
        insertions.push({ end: whole.length, length: patch.text.length });
      } else {
        // Two patches may blank the same characters.
        whole += patch.text.slice(at - patch.at);
        at = Math.max(at, patch.at + patch.length);
      }
    }
    const mended = new Mended(whole + text.slice(at), sorted, lost);
    let sum = 0;
    for (const { end, length } of insertions) {
      sum += length;
      mended.ends.push(end);
      mended.sums.push(sum);
    }
    return mended;
  }

  get isWhole(): boolean {
    return this.patches.length === 0;
  }

  /** The offset in the text as written; of a place inside an insertion, where that was put. */
  toSource(offset: number): number {
    const { ends, sums } = this;
    if (ends.length === 0) return offset;
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((ends[middle] ?? 0) <= offset) low = middle + 1;
      else high = middle;
    }
    const before = low === 0 ? 0 : (sums[low - 1] ?? 0);
    const next = ends[low];
    if (next === undefined) return offset - before;
    // Inside an insertion all is at its place.
    const start = next - ((sums[low] ?? 0) - before);
    return Math.min(offset, start) - before;
  }

  /** Whether something was changed from `start` to `end` of the text as written, the ends included. */
  touches(start: number, end: number): boolean {
    return this.patches.some((patch) => patch.at <= end && patch.at + patch.length >= start);
  }
}
