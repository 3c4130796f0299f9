/** Lines of the sketch for people: offsets become line numbers here, since papers are read beside a printed file. */
import type { Span } from '../base/span';
import type { Source } from './paper';

/** "harbour.ino, line 12"; the file's name alone where its text is not at hand. */
export function lineOf(sources: readonly Source[], span: Span): string {
  const source = sources.find(({ file }) => file === span.file);
  const name = span.file.slice(span.file.lastIndexOf('/') + 1);
  return source ? `${name}, line ${linesOf(source.text.slice(0, span.start)).length}` : name;
}

/** A text's lines without their ends, whichever of the three line ends it has. */
export function linesOf(text: string): readonly string[] {
  return text.split(/\r\n|\r|\n/);
}
