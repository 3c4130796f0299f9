/**
 * The nearest right name for a mistyped one. Every reader that meets an unknown name offers it, with the edit.
 */
import { distance } from 'fastest-levenshtein';
import type { Problem } from '../base/read';
import type { Span } from '../base/span';

/** Names beyond this length are no slips, and measuring them against many would take long. */
const longestName = 60;

/** @returns The candidate most like `name`, undefined where none is like it. Upper and lower case count as alike. */
export function nearestName(name: string, candidates: Iterable<string>): string | undefined {
  return nearestNames(name, candidates)[0];
}

/** All candidates that are as like `name` as the nearest, in their order. */
export function nearestNames(name: string, candidates: Iterable<string>): readonly string[] {
  const wanted = name.trim().toLowerCase();
  if (wanted === '' || wanted.length > longestName) return [];
  let best: string[] = [];
  // A third of the letters may be wrong, at least one.
  let bestDistance = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of candidates) {
    if (candidate.length > longestName) continue;
    const apart = slips(wanted, candidate.toLowerCase());
    if (apart < bestDistance) {
      best = [candidate];
      bestDistance = apart;
    } else if (apart === bestDistance && best.length > 0 && !best.includes(candidate)) best.push(candidate);
  }
  // A letter slips sooner than a number: of equals, those with the same digits are likelier.
  const alike = best.filter((candidate) => digitsOf(candidate) === digitsOf(wanted));
  return alike.length > 0 ? alike : best;
}

function digitsOf(name: string): string {
  return name.replace(/\D/g, '');
}

/** Letters to put in, take out or change; two that have changed places are one slip. */
function slips(a: string, b: string): number {
  const apart = distance(a, b);
  if (apart !== 2 || a.length !== b.length) return apart;
  const first = [...a].findIndex((letter, index) => letter !== b[index]);
  return a[first] === b[first + 1] && a[first + 1] === b[first] ? 1 : apart;
}

/** "a, b and c"; long lists are cut. */
export function listNames(names: readonly string[], most = 12): string {
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  if (shown.length < 2) return shown.join('');
  return `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

/** Names as quoted in messages: short, on one line. */
export function quoteName(name: string): string {
  const line = name.replace(/[\p{Cc}\s]+/gu, ' ');
  return `"${line.length > longestName ? `${line.slice(0, longestName)}...` : line}"`;
}

/** "an analog sensor", "a DC motor", "an LED": as it is spoken, letter by letter where it is an abbreviation. */
export function withArticle(title: string): string {
  const word = /^\w*/.exec(title)?.[0] ?? '';
  const spelled = /^(?:[A-Z0-9]{2,}|[A-Z])$/.test(word);
  const vowel = spelled ? /^[AEFHILMNORSX8]/.test(word) : /^[aeio]/i.test(word) || /^u(?!s|ni)/i.test(word);
  return `${vowel ? 'an' : 'a'} ${title}`;
}

/**
 * A problem about an unknown name, with the nearest right one as its fix, or the right ones in its hint.
 * @param span What is replaced: the name between its quotes.
 */
export function unknownName(
  code: string,
  message: string,
  span: Span,
  name: string,
  candidates: readonly string[],
): Problem {
  const [near, ...others] = nearestNames(name, candidates);
  if (near !== undefined && others.length > 0 && others.length < 3) {
    // Which of several is meant nobody can tell from the letters.
    const words = [near, ...others].map(quoteName);
    return { code, message, span, hint: `Did you mean ${words.slice(0, -1).join(', ')} or ${words.at(-1)}?` };
  }
  if (near !== undefined && others.length === 0) {
    const edits = [{ ...span, text: JSON.stringify(near).slice(1, -1) }];
    const fix = { title: `Write ${quoteName(near)}`, edits };
    return { code, message, span, hint: `Did you mean ${quoteName(near)}?`, fix };
  }
  if (candidates.length === 0) return { code, message, span };
  return { code, message, span, hint: `Right names: ${listNames(candidates)}.` };
}
