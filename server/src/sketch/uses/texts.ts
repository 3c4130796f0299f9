/** The texts of the files by name: for the wording of an argument, and for line numbers in words. */
import type { Span } from '../../base/span';

export class Texts {
  private readonly texts: ReadonlyMap<string, string>;
  private readonly starts = new Map<string, readonly number[]>();

  constructor(files: readonly { readonly file: string; readonly text: string }[]) {
    this.texts = new Map(files.map(({ file, text }) => [file, text]));
  }

  of(span: Span): string {
    return this.texts.get(span.file)?.slice(span.start, span.end) ?? '';
  }

  /** The line of an offset as people count, from 1. A lone carriage return ends a line, as it does in the editor. */
  line(span: Span): number {
    const starts = this.lineStarts(span.file);
    let low = 0;
    let high = starts.length;
    while (low + 1 < high) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= span.start) low = middle;
      else high = middle;
    }
    return low + 1;
  }

  private lineStarts(file: string): readonly number[] {
    const ready = this.starts.get(file);
    if (ready !== undefined) return ready;
    const starts = [0];
    const text = this.texts.get(file) ?? '';
    const lone = text.includes('\r');
    for (let at = 0; at < text.length; at += 1) {
      if (!lone) {
        at = text.indexOf('\n', at);
        if (at === -1) break;
        starts.push(at + 1);
        continue;
      }
      const code = text.charCodeAt(at);
      if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
    }
    this.starts.set(file, starts);
    return starts;
  }
}
