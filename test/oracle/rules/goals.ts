/** What the rule book has to reach. */
import type { Measured } from './measure';
import { sumRows } from './report';

/** Share of the seeded faults that the right rule finds at the right place. */
export const FOUND = 0.99;
/** Share of the seeds on which nothing else is told as an error or a warning. */
export const ALONE = 0.97;

export function missedGoals({ falseAlarms, rows }: Measured): readonly string[] {
  const all = sumRows(rows);
  const missed: string[] = [];
  const share = all.placed / Math.max(1, all.seeded);
  const alone = 1 - all.extra / Math.max(1, all.seeded + all.inside);
  if (falseAlarms.length > 0) missed.push(`${falseAlarms.length} errors and warnings on clean builds`);
  if (share < FOUND) missed.push(`${(100 * share).toFixed(1)} % found in place, ${100 * FOUND} % wanted`);
  if (all.spoke > 0) missed.push(`${all.spoke} seeds inside a limit are told`);
  if (alone < ALONE) missed.push(`${all.extra} findings beside the seeded ones`);
  if (all.brokenFixes > 0) missed.push(`${all.brokenFixes} fixes that do not cure, or cost something`);
  return missed;
}
