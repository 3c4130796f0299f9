/**
 * What a part carries in the state where it carries most, and what it would carry with another value out of the stock.
 * The other value is put into the very network and solved anew, at the same corners of tolerance.
 */

import type { SolvedState, Workings } from '../analysis';
import { formatQuantity } from '../base/quantity';
import { type Range, within, worst } from '../base/range';
import { solveNetwork } from '../circuit';
import { ampWords, magnitude } from './figure-words';
import type { PaperInput } from './paper';

export interface Loaded {
  readonly state: SolvedState;
  readonly amps: Range;
}

/** Below this nothing flows that anybody measures, amperes. */
const nothing = 1e-7;

/** The state in which an element carries most; undefined where it never carries anything. */
export function mostLoaded(workings: Workings, element: string): Loaded | undefined {
  let found: Loaded | undefined;
  for (const region of workings.regions) {
    if (!region.elements.some(({ id }) => id === element)) continue;
    for (const state of region.states) {
      const amps = state.point.amps[element];
      if (amps && worst(amps) > Math.max(nothing, found ? worst(found.amps) : 0)) found = { state, amps };
    }
  }
  return found;
}

/** One value of the stock in the place of another. */
export interface Instead {
  readonly ohms: number;
  /** Amperes through it, either way, at the corners. */
  readonly amps: Range;
  /** Watts in it at the worst corner. */
  readonly watts: number;
  /** What speaks against it, in words; empty where nothing does. */
  readonly against: string;
}

/** The next smaller and the next larger value of the stock, with what they do. */
export function offerInstead(input: PaperInput, element: string, ohms: number): readonly Instead[] {
  const loaded = mostLoaded(input.workings, element);
  if (!loaded) return [];
  const { resistors } = input.build.stock;
  const smaller = resistors.filter((value) => value < ohms * (1 - 1e-9) && value > 0).at(-1);
  const larger = resistors.find((value) => value > ohms * (1 + 1e-9));
  return [smaller, larger].flatMap((value) => {
    const other = value === undefined ? undefined : putInstead(input, loaded.state, element, value);
    return other ? [other] : [];
  });
}

function putInstead(
  input: PaperInput,
  { network }: SolvedState,
  element: string,
  ohms: number,
): Instead | undefined {
  const { tolerance, watts: rating } = input.build.stock;
  const elements = network.elements.map((each) =>
    each.id === element && each.type === 'resistor' ? { ...each, ohms: within(ohms, tolerance) } : each,
  );
  const point = solveNetwork({ ...network, elements });
  const through = point.amps[element];
  if (!point.converged || !through) return undefined;
  const watts = worst(through) ** 2 * ohms * (1 + tolerance);
  const against: string[] = [];
  if (watts > rating) against.push(`it would take ${formatQuantity(watts, 'W')}`);
  for (const { pin, limit } of input.workings.pins) {
    const amps = point.amps[`pin:${pin}`];
    if (amps && worst(amps) > limit.amps)
      against.push(`${pin} would carry ${formatQuantity(worst(amps), 'A')}`);
  }
  for (const { id, part, primitive } of input.workings.placed) {
    const amps = point.amps[id];
    if (primitive.type === 'diode' && primitive.maxAmps !== undefined && amps && amps.max > primitive.maxAmps)
      against.push(`${part} would carry ${formatQuantity(amps.max, 'A')}`);
  }
  return { ohms, amps: magnitude(through), watts, against: against.join(', ') };
}

/** "330 ohm: 5.1 / 8.3 / 10.3 mA". */
export function insteadWords({ ohms, amps, against }: Instead): string {
  const told = `${formatQuantity(ohms, 'ohm')}: ${ampWords(amps)}`;
  return against === '' ? told : `${told}; not allowed: ${against}`;
}
