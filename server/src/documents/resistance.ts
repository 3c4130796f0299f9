/**
 * What an ohmmeter shows between two nets with everything switched off: the circuit engine is given a test current and
 * the parts that conduct it. Junctions count as open, since the ohms range stays below what opens them; the board counts
 * as absent, since its chip and regulator lie beside everything.
 */

import type { Placed } from '../analysis';
import type { Element } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import { solveNetwork } from '../circuit';

const TEST_AMPS = 1e-3;
/** A closed contact, ohms (common practice: well under 1). */
const CONTACT: Range = { min: 0.01, typ: 0.05, max: 0.1 };

/** Which switches are not at rest, by placed id. */
export type Moved = ReadonlySet<string>;

/** What conducts a test current: elements with the nets as nodes. Knobs stand in the middle. */
function conducting(placed: readonly Placed[], moved: Moved): Element[] {
  return placed.flatMap((each): Element[] => {
    if (each.onBoard) return [];
    const { id, primitive, third } = each;
    const [a, b] = each.nets;
    const resistor = (from: string, to: string, ohms: Range, name = id): Element => ({
      type: 'resistor',
      id: name,
      a: from,
      b: to,
      ohms: { min: ohms.min, typ: ohms.typ, max: ohms.max },
    });
    switch (primitive.type) {
      case 'resistor':
      case 'coil':
        return [resistor(a, b, primitive.ohms)];
      case 'switch':
        return moved.has(id) === (primitive.rest === 'open') ? [resistor(a, b, CONTACT)] : [];
      case 'potentiometer': {
        const half = {
          min: primitive.ohms.min / 2,
          typ: primitive.ohms.typ / 2,
          max: primitive.ohms.max / 2,
        };
        return third === undefined
          ? []
          : [resistor(a, third, half, `${id}:1`), resistor(third, b, half, `${id}:2`)];
      }
      default:
        return [];
    }
  });
}

/** The elements that hang together with a node. */
function around(elements: readonly Element[], node: string): readonly Element[] {
  const reached = new Set([node]);
  const chosen = new Set<Element>();
  for (let before = -1; before < chosen.size; ) {
    before = chosen.size;
    for (const element of elements) {
      if (element.type !== 'resistor' || chosen.has(element)) continue;
      if (!reached.has(element.a) && !reached.has(element.b)) continue;
      chosen.add(element);
      reached.add(element.a).add(element.b);
    }
  }
  return [...chosen];
}

/** Ohms between two nets at the corners of tolerance; `open` where nothing joins them. */
export function ohmsBetween(
  placed: readonly Placed[],
  a: string,
  b: string,
  moved: Moved = new Set(),
): Range | 'open' {
  if (a === b) return exactly(0);
  const elements = around(conducting(placed, moved), a);
  const reached = elements.some(
    (element) => element.type === 'resistor' && (element.a === b || element.b === b),
  );
  if (!reached) return 'open';
  const source: Element = { type: 'current', id: 'meter', from: b, to: a, amps: exactly(TEST_AMPS) };
  const { nodes, converged } = solveNetwork({ ground: b, elements: [...elements, source] });
  const volts = nodes[a];
  if (!converged || !volts) return 'open';
  return { min: volts.min / TEST_AMPS, typ: volts.typ / TEST_AMPS, max: volts.max / TEST_AMPS };
}

/** What the diode range of a meter shows, at about 1 mA, volts. */
export function diodeVolts(volts: Range, atAmps: number): Range | undefined {
  const elements: Element[] = [
    { type: 'diode', id: 'junction', anode: 'a', cathode: '0', volts, atAmps },
    { type: 'current', id: 'meter', from: '0', to: 'a', amps: exactly(TEST_AMPS) },
  ];
  const { nodes, converged } = solveNetwork({ ground: '0', elements });
  return converged ? nodes.a : undefined;
}
