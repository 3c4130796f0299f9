/** Where a new statement goes in setup(), in the hand of the file: its indentation and its line ending. */
import type { SetupPlace } from '../../base/pin-use';
import type { Callable } from '../values/value';

export function setupPlaceOf(
  files: readonly { readonly file: string; readonly text: string }[],
  setup: Callable | undefined,
): SetupPlace | undefined {
  const bodyStart = setup?.item.bodyStart;
  if (setup === undefined || bodyStart === undefined) return undefined;
  const { file, base } = setup.site;
  const text = files.find((one) => one.file === file)?.text;
  if (text === undefined) return undefined;
  const offset = base + bodyStart;
  const newline = newlineOf(text);
  return { file, offset, indent: indentIn(text, offset, base + setup.item.start), newline };
}

/** The ending that most lines have. */
function newlineOf(text: string): string {
  const both = text.match(/\r\n/g)?.length ?? 0;
  const feeds = (text.match(/\n/g)?.length ?? 0) - both;
  const returns = (text.match(/\r/g)?.length ?? 0) - both;
  if (both > 0 && both >= feeds && both >= returns) return '\r\n';
  return returns > feeds ? '\r' : '\n';
}

/** The white space of the body's first line of its own; else the function's, one step further in. */
function indentIn(text: string, offset: number, functionStart: number): string {
  const inside =
    /^[^\S\r\n]*(?:\/\/[^\r\n]*)?(?:\r\n|\r|\n)(?:[^\S\r\n]*(?:\r\n|\r|\n))*([^\S\r\n]*)(?!\})\S/.exec(
      text.slice(offset, offset + 2000),
    );
  if (inside?.[1] !== undefined) return inside[1];
  const lineStart =
    Math.max(text.lastIndexOf('\n', functionStart - 1), text.lastIndexOf('\r', functionStart - 1)) + 1;
  const outer = /^[^\S\r\n]*/.exec(text.slice(lineStart, functionStart))?.[0] ?? '';
  return outer + stepOf(text);
}

/** One step of indentation as the file has it: the first indented line tells. */
function stepOf(text: string): string {
  const first = /(?:^|[\r\n])([ \t]+)[^\s*]/.exec(text)?.[1];
  if (first === undefined) return '  ';
  return first.startsWith('\t') ? '\t' : first;
}
