/** Numbers that look random and are the same in every run. */

export interface Random {
  /** A whole number from 0 up to, not including, `below`. */
  below(below: number): number;
  /** One of a list. @throws RangeError where it is empty. */
  pick<T>(list: readonly T[]): T;
  /** True once in `times`. */
  once(times: number): boolean;
}

/** A generator from a text: the 32-bit mixing of a counter (the constants of MurmurHash3's finaliser, from memory). */
export function seeded(seed: string): Random {
  let state = 2_166_136_261;
  for (const letter of seed) {
    state = Math.imul(state ^ (letter.codePointAt(0) ?? 0), 16_777_619) >>> 0;
  }
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return (mixed ^ (mixed >>> 16)) >>> 0;
  };
  const below = (limit: number): number => next() % limit;
  return {
    below,
    pick: (list) => {
      const picked = list[below(list.length)];
      if (picked === undefined) {
        throw new RangeError('nothing to pick from');
      }
      return picked;
    },
    once: (times) => below(times) === 0,
  };
}
