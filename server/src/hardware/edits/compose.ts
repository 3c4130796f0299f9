/**
 * Several edits that are worked out one after the other, each on the text the last one left, as one set of edits of
 * the original text. A repair adds a part and a wire: both may have to open a section at the same place.
 */
import { applyEdits, type Edit } from '../../base/span';

/** A run of the original text, or text put in. */
type Piece = { readonly start: number; readonly end: number } | { readonly added: string };

export type EditStep = (text: string) => readonly Edit[];

/**
 * @param file File of the edits.
 * @param steps Each gets the text as the steps before it left it.
 */
export function composeEdits(text: string, file: string, ...steps: readonly EditStep[]): Edit[] {
  let current = text;
  let pieces: Piece[] = [{ start: 0, end: text.length }];
  for (const step of steps) {
    const edits = step(current);
    // From the back, so that the offsets of those in front still hold. Of several insertions at one place the last
    // comes first then, and the others are put in front of it.
    const ordered = [...edits].map((edit, index) => ({ edit, index }));
    ordered.sort((a, b) => b.edit.start - a.edit.start || b.edit.end - a.edit.end || b.index - a.index);
    for (const { edit } of ordered) pieces = replace(pieces, edit.start, edit.end, edit.text);
    current = applyEdits(current, edits);
  }
  return toEdits(pieces, text.length, file);
}

function sizeOf(piece: Piece): number {
  return 'added' in piece ? piece.added.length : piece.end - piece.start;
}

function cut(piece: Piece, from: number, to: number): Piece {
  if ('added' in piece) return { added: piece.added.slice(from, to) };
  return { start: piece.start + from, end: piece.start + to };
}

function replace(pieces: readonly Piece[], start: number, end: number, text: string): Piece[] {
  const result: Piece[] = [];
  let at = 0;
  let placed = false;
  const place = () => {
    if (!placed && text !== '') result.push({ added: text });
    placed = true;
  };
  for (const piece of pieces) {
    const size = sizeOf(piece);
    const head = Math.min(Math.max(start - at, 0), size);
    const tail = Math.min(Math.max(end - at, 0), size);
    if (head > 0) result.push(cut(piece, 0, head));
    if (start - at <= size && start <= at + head) place();
    if (tail < size) result.push(cut(piece, tail, size));
    at += size;
  }
  place();
  return result;
}

function toEdits(pieces: readonly Piece[], length: number, file: string): Edit[] {
  const edits: Edit[] = [];
  let at = 0;
  let added = '';
  const flush = (start: number) => {
    if (start > at || added !== '') edits.push({ file, start: at, end: start, text: added });
    added = '';
  };
  for (const piece of pieces) {
    if ('added' in piece) {
      added += piece.added;
    } else {
      flush(piece.start);
      at = piece.end;
    }
  }
  flush(length);
  return edits;
}
