/**
 * The mark of a guess: a comment behind a part's entry in the manifest, `// guessed: …`, and `// guessed: for NAME` behind
 * what was put in for its sake. A person reads the marks, and so do the actions that confirm a guess or change it.
 */
import type { Edit } from '../../base/span';
import { type Member, memberAt, readLayout, valueAt } from '../../hardware/edits/layout';

export interface Mark {
  readonly part: string;
  /** What stands behind "guessed: ". */
  readonly why: string;
  /** The comment with the white space in front of it. */
  readonly start: number;
  readonly end: number;
  /** The part's entry, from its key. */
  readonly entry: number;
}

/** Puts a mark behind a part's entry. */
export function addMark(text: string, part: string, why: string, file: string): Edit[] {
  const layout = readLayout(text);
  const member = memberAt(valueAt(layout?.root, ['parts']), part);
  if (member === undefined) return [];
  const offset = (member.comma ?? member.end - 1) + 1;
  const words = why.replace(/\*\//g, '* /').replace(/\s+/g, ' ').trim();
  const alone = /^[^\S\r\n]*(?:\r|\n|$)/.test(text.slice(offset));
  const comment = alone ? ` // guessed: ${words}` : ` /* guessed: ${words} */`;
  return [{ file, start: offset, end: offset, text: comment }];
}

/** All marks of a manifest; none where it is half typed. */
export function findMarks(text: string): readonly Mark[] {
  if (!text.includes('guessed:')) return [];
  const layout = readLayout(text);
  return marksIn(text, valueAt(layout?.root, ['parts'])?.members ?? []);
}

/** The mark of the board, as one whose part is `board`. */
export function findBoardMark(text: string): Mark | undefined {
  if (!text.includes('guessed:')) return undefined;
  const members = readLayout(text)?.root?.members ?? [];
  return marksIn(text, members).find(({ part }) => part === 'board');
}

function marksIn(text: string, members: readonly Member[]): readonly Mark[] {
  return members.flatMap((member, index): Mark[] => {
    const from = (member.comma ?? member.end - 1) + 1;
    const until = members[index + 1]?.start ?? text.length;
    const found =
      /^[^\S\r\n]*(?:\/\/[^\S\r\n]*guessed:([^\r\n]*)|\/\*[^\S\r\n]*guessed:((?:(?!\*\/)[^\r\n])*)\*\/)/.exec(
        text.slice(from, until),
      );
    if (!found || member.key === undefined) return [];
    const why = (found[1] ?? found[2] ?? '').trim();
    return [{ part: member.key, why, start: from, end: from + found[0].length, entry: member.start }];
  });
}

/** The part that a mark says its part was put in for. */
export function servedBy(mark: Mark): string | undefined {
  return /^for (\S+)$/.exec(mark.why)?.[1];
}
