/** How far a long run is, on one line of a terminal that is wiped in the end. */

/** Milliseconds until the line appears, and from one change of it to the next. */
const FIRST = 500;
const EVERY = 100;

export interface Progress {
  /** Says how many of all sketches are done. */
  show(done: number, all: number): void;
  /** Wipes the line. */
  clear(): void;
}

/**
 * @param write Where the line goes; absent: nowhere.
 * @param now Milliseconds of any clock.
 */
export function createProgress(write: ((text: string) => void) | undefined, now: () => number): Progress {
  const started = now();
  let last = Number.NEGATIVE_INFINITY;
  let width = 0;
  return {
    show(done, all) {
      const time = now();
      if (write === undefined || time - started < FIRST || time - last < EVERY || done === all) {
        return;
      }
      last = time;
      const text = `${done} of ${all} sketches checked`;
      write(`\r${text.padEnd(width)}`);
      width = Math.max(width, text.length);
    },
    clear() {
      if (width > 0) {
        write?.(`\r${' '.repeat(width)}\r`);
        width = 0;
      }
    },
  };
}
