/**
 * Making many combinations of pin states fewer: pins are loosened one by one, those first whose telling apart costs most.
 * What states a loosened pin may be in is then kept beside the combinations, which holds and says less.
 */

/** Characters of a combination stand for sets of states: this one plus their bits; for a loosened pin, this one. */
export const zero = 32;

export interface Loosened {
  readonly together: readonly string[];
  /** Places in a combination that were loosened, each with the states that were there. */
  readonly places: ReadonlyMap<number, number>;
}

/** @param blank the character of a place that no change has reached yet. */
export function loosen(given: readonly string[], most: number, blank: string): Loosened {
  const width = given.reduce((longest, { length }) => Math.max(longest, length), 0);
  let together: readonly string[] = [...new Set(given.map((one) => one.padEnd(width, blank)))];
  const places = new Map<number, number>();
  const weights = Array.from({ length: width }, (_, place) => Math.imul(place + 1, 0x9e3779b1) | 1);
  while (together.length > most) {
    const chosen = costliest(together, weights, places, most);
    if (chosen.length === 0) break;
    for (const place of chosen) places.set(place, statesIn(together, place));
    together = withoutPlaces(together, chosen, blank);
  }
  return { together, places };
}

/**
 * The places without which fewest are left, by sums that stand for the combinations: as many as will do if they do not
 * depend on one another. None where none differs.
 */
function costliest(
  together: readonly string[],
  weights: readonly number[],
  done: ReadonlyMap<number, number>,
  most: number,
): readonly number[] {
  const sums = new Int32Array(together.length);
  for (const [at, one] of together.entries()) {
    let sum = 0;
    for (let place = 0; place < weights.length; place += 1)
      sum = (sum + Math.imul(one.charCodeAt(place), weights[place] ?? 0)) | 0;
    sums[at] = sum;
  }
  const found: { readonly place: number; readonly left: number }[] = [];
  for (const [place, weight] of weights.entries()) {
    const first = together[0]?.charCodeAt(place);
    if (done.has(place) || together.every((one) => one.charCodeAt(place) === first)) continue;
    const left = new Set<number>();
    for (let at = 0; at < together.length; at += 1)
      left.add(((sums[at] ?? 0) - Math.imul(together[at]?.charCodeAt(place) ?? 0, weight)) | 0);
    found.push({ place, left: left.size });
  }
  found.sort((a, b) => a.left - b.left);
  const chosen: number[] = [];
  let rest = together.length;
  for (const { place, left } of found) {
    if (rest <= most) break;
    chosen.push(place);
    rest *= left / together.length;
  }
  return chosen;
}

/** All states that a place may be in. */
export function statesIn(together: readonly string[], place: number): number {
  let states = 0;
  for (const one of together) states |= one.charCodeAt(place) - zero;
  return states;
}

/** The combinations with some places left out. */
export function withoutPlaces(
  given: readonly string[],
  places: readonly number[],
  blank: string,
): readonly string[] {
  const width = given.reduce((longest, { length }) => Math.max(longest, length), Math.max(...places) + 1);
  const empty = blank.charCodeAt(0);
  const codes = new Array<number>(width);
  const found = new Set<string>();
  for (const one of given) {
    for (let at = 0; at < width; at += 1) codes[at] = at < one.length ? one.charCodeAt(at) : empty;
    for (const place of places) codes[place] = zero;
    found.add(String.fromCharCode(...codes));
  }
  return [...found];
}
