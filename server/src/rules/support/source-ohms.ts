/** The resistance that one sees from a net into what feeds it, in one state of its region: the source's own. */
import type { Element } from '../../base/circuit';
import { exactly, type Range } from '../../base/range';
import { wiperPlaces } from '../../base/wiper-places';
import { solveNetwork } from '../../circuit';
import type { Placed, Region, StatePoint, Subject } from '../subject';

const ground = '0';
const contactOhms = exactly(0.05);
/** Small enough to disturb nothing, amperes. */
const probe = 1e-3;

/**
 * Ohms at a net with all its supplies at rest. Undefined where junctions or loads lie in the region, since those have
 * no one resistance, or where nothing ties the net.
 * @param wiper Where knobs are taken to stand; the middle is where a track feeds its wiper worst.
 */
export function sourceOhms(
  subject: Subject,
  region: Region,
  state: StatePoint,
  net: string,
  wiper: 'as in the state' | 'in the middle' = 'as in the state',
): Range | undefined {
  const node = (name: string) => (subject.rails[name] === undefined ? name : ground);
  const { elements } = region;
  if (elements.some(({ primitive: { type } }) => type === 'diode' || type === 'transistor')) return undefined;
  const shareOf = (id: string) =>
    (wiper === 'as in the state' ? wiperPlaces[state.settings[id] ?? ''] : undefined) ?? 0.5;
  const network = elements.flatMap((element) => resistancesOf(element, state, node, shareOf(element.id)));
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
  share: number,
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
      const { min, typ, max } = primitive.ohms;
      const piece = (of: number): Range => ({ min: min * of, typ: typ * of, max: max * of });
      return [
        resistor(a, third, piece(share), `${id}:first`),
        resistor(third, b, piece(1 - share), `${id}:second`),
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
