/** The nearest right name to a mistyped one. */
import { distance } from 'fastest-levenshtein';

/** The known name that takes the fewest edits, or none where that would be a guess. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  // A third of the letters, and never fewer than two, may be wrong; beyond that the two are different words.
  const most = Math.max(2, Math.floor(name.length / 3));
  let best: string | undefined;
  let least = most + 1;
  for (const candidate of known) {
    const edits = distance(name.toLowerCase(), candidate.toLowerCase());
    if (edits < least) {
      least = edits;
      best = candidate;
    }
  }
  return best;
}
