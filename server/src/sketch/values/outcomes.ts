/** What may become of a bit, as bits of a set; in a file of its own, for files that need one another all need it. */
export const outcome = { zero: 1, one: 2, same: 4, flip: 8 } as const;
