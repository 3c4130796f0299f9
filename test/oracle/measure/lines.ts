/** Spans of the sketch layer as the lines of the compiler's table. */
import { basename } from 'node:path';
import type { Span } from '../../../server/src/base/span';
import type { SketchFile } from '../firmware/compile-firmware';

export interface Place {
  readonly file: string;
  /** From 1. */
  readonly line: number;
}

export interface Lines {
  /** True where the line is one of those that the span stands on. */
  covers(span: Span, at: Place): boolean;
  /** First and last line of a span. */
  of(span: Span): { readonly file: string; readonly first: number; readonly last: number };
  /** `lamp.ino:12` */
  nameOf(span: Span): string;
}

export function linesOf(files: readonly SketchFile[]): Lines {
  const starts = new Map(files.map(({ name, text }) => [basename(name), lineStarts(text)]));
  const of: Lines['of'] = (span) => {
    const file = basename(span.file);
    const table = starts.get(file) ?? [0];
    return { file, first: lineAt(table, span.start), last: lineAt(table, span.end) };
  };
  return {
    of,
    covers(span, at) {
      const { file, first, last } = of(span);
      return file === at.file && first <= at.line && at.line <= last;
    },
    nameOf(span) {
      const { file, first } = of(span);
      return `${file}:${first}`;
    },
  };
}

function lineStarts(text: string): readonly number[] {
  return [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)];
}

function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= offset) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return low + 1;
}
