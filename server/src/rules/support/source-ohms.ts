/** The resistance that one sees from a net into what feeds it, in one state of its region: the source's own. */
import type { Element } from '../../base/circuit';
import { exactly, type Range } from '../../base/range';
import { solveNetwork } from '../../circuit';
import type { Placed, Region, StatePoint, Subject } from '../subject';

const ground = '0';
const contactOhms = exactly(0.05);
/** Small enough to disturb nothing, amperes. */
const probe = 1e-3;

/**
 * Ohms at a net with all its supplies at rest. Undefined where junctions or loads lie in the region, since those have
 * no one resistance, or where nothing ties the net.
 * @param passes Leaves out what must not count.
 */
export function sourceOhms(
  subject: Subject,
  region: Region,
  state: StatePoint,
  net: string,
  passes: (element: Placed) => boolean = () => true,
): Range | undefined {
  const node = (name: string) => (subject.rails[name] === undefined ? name : ground);
  const elements = region.elements.filter(passes);
  if (elements.some(({ primitive: { type } }) => type === 'diode' || type === 'transistor')) return undefined;
  const network = elements.flatMap((element) => resistancesOf(element, state, node));
  network.push({ type: 'current', id: 'probe', from: ground, to: node(net), amps: exactly(probe) });
  const point = solveNetwork({ ground, elements: network });
  const volts = point.nodes[node(net)];
  if (!point.converged || !volts || volts.typ <= 0) return undefined;
  return { min: volts.min / probe, typ: volts.typ / probe, max: volts.max / probe };
}

function resistancesOf(
  { id, primitive, nets, third }: Placed,
  state: StatePoint,
  node: (net: string) => string,
): readonly Element[] {
  const resistor = (a: string, b: string, ohms: Range, name = id): Element => ({
    type: 'resistor',
    id: name,
    a: node(a),
    b: node(b),
    ohms,
  });
  const [a, b] = nets;
  switch (primitive.type) {
    case 'resistor':
    case 'coil':
    case 'logic-input':
    case 'source':
      return [resistor(a, b, primitive.ohms)];
    case 'switch':
      return state.switches[id] === 'closed' ? [resistor(a, b, contactOhms)] : [];
    case 'potentiometer': {
      if (third === undefined) return [];
      // The middle is where a track feeds its wiper worst.
      const half = (range: Range): Range => ({ min: range.min / 2, typ: range.typ / 2, max: range.max / 2 });
      return [
        resistor(a, third, half(primitive.ohms), `${id}:first`),
        resistor(third, b, half(primitive.ohms), `${id}:second`),
      ];
    }
    case 'logic-output': {
      const to = state.settings[id] === 'high' ? third : state.settings[id] === 'released' ? undefined : b;
      return to === undefined ? [] : [resistor(a, to, primitive.ohms)];
    }
    default:
      return [];
  }
}
