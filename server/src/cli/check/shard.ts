/**
 * A part of the sketches, for a repository that spreads its check over several machines: shard 3 of 8 takes every eighth
 * folder of the ordered list from the third on, so that big and small ones mix and every machine comes to the same list.
 */

/** The `index`-th of `count` parts; counts from 1. */
export interface Shard {
  readonly index: number;
  readonly count: number;
}

/** More parts than this are a slip of the keyboard. */
const MOST_SHARDS = 10_000;

/** Reads `3/8`; undefined where it is none. */
export function readShard(text: string): Shard | undefined {
  const match = /^(\d{1,5})\/(\d{1,5})$/.exec(text);
  const [index, count] = [Number(match?.[1]), Number(match?.[2])];
  return index >= 1 && index <= count && count <= MOST_SHARDS ? { index, count } : undefined;
}

/** The shard's share of a list. */
export function shareOf<T>(all: readonly T[], { index, count }: Shard): readonly T[] {
  return all.filter((_, at) => at % count === index - 1);
}
