/** Tells a server that fell once from one that keeps falling. */

/** Deaths within this time count together, milliseconds. */
const WINDOW = 3 * 60 * 1000;
/** So many deaths within the window are borne. */
const BORNE = 4;

export class DeathCount {
  private times: number[] = [];

  /**
   * Counts one death.
   * @param now Milliseconds on any clock that does not run back.
   * @returns true where it is worth starting again.
   */
  add(now: number): boolean {
    this.times = [...this.times.filter((time) => now - time < WINDOW), now];
    return this.times.length <= BORNE;
  }

  forget(): void {
    this.times = [];
  }
}
