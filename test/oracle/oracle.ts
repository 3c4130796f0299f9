/**
 * An oracle is a program outside the project that knows the truth: a compiler, a simulator, a chip's own headers. A
 * machine without one cannot run the comparison, and that must never look like a comparison that succeeded.
 */

/** The part of a test's context that this file needs. */
export interface SkippableTest {
  skip(reason?: string): void;
}

/** Reasons that were already said: one line for each is enough. */
const said = new Set<string>();

/** True where every oracle has to be there, as in continuous integration. */
export function oraclesRequired(): boolean {
  return process.env.WIRETRUE_REQUIRE_ORACLES === '1';
}

/**
 * Call first in a test that compares with an oracle. Without the oracle it ends the test: as a failure where the
 * environment variable WIRETRUE_REQUIRE_ORACLES is 1, else as skipped, with a line on the console that says so.
 * @throws Error where the oracle is required and missing.
 */
export function requireOracle(context: SkippableTest, name: string, present: boolean): void {
  if (present) {
    return;
  }
  if (oraclesRequired()) {
    throw new Error(`The oracle "${name}" is missing, and WIRETRUE_REQUIRE_ORACLES=1 demands it.`);
  }
  const reason = `not compared: the oracle "${name}" is not on this machine`;
  if (!said.has(reason)) {
    said.add(reason);
    console.warn(`SKIPPED: ${reason}`);
  }
  context.skip(reason);
}
