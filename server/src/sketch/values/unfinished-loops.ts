/** Heads of `for` loops as they stand while somebody types them. */
import type { Expression } from '../form/ast';

/** True where what moves the loop on may not be typed yet: `for (int i = 0; i < 4; i)`. */
export function isStepUnfinished(test: Expression | undefined, step: Expression | undefined): boolean {
  return test !== undefined && (step === undefined || /^(name|number|opaque)$/.test(step.kind));
}

/** True for what is left of a comparison: `for (int i = 0; 12; i++)`, `for (int i = 0; COUNT; i++)`. */
export function isTestUnfinished(test: Expression, step: Expression | undefined): boolean {
  if (step?.kind !== 'step' || step.operand.kind !== 'name') return false;
  if (test.kind === 'number') return test.value > 1;
  return test.kind === 'name' && test.name !== step.operand.name;
}
