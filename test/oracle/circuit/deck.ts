/** The text in which the circuit simulator reads a network, with the same element models as ours. */
import type { Element, Network, OperatingPoint } from '../../../server/src/base/circuit';
import { REVERSE_GAIN } from '../../../server/src/circuit/device';
import { IDEALITY, makeJunction, THERMAL_VOLTS } from '../../../server/src/circuit/diode';

/** What a deck asks the simulator to print: its own expression, and what it is to us. */
export interface Asked {
  readonly expression: string;
  readonly kind: 'node' | 'element';
  readonly name: string;
}

/** The lines of one element, its nodes, and the expressions of its currents by our names. */
interface Written {
  readonly lines: readonly string[];
  readonly nodes: readonly string[];
  readonly amps: Readonly<Record<string, string>>;
}

/** Volts by which a breakdown is put off by a source of its own: its saturation current would be too small a number. */
const SHIFT_VOLTS = 2;
/** Where the bulk of a field-effect transistor lies: far beyond reach, so that its own diodes stay out of the sum. */
export const BULK_VOLTS = 60;

/**
 * The network as a simulator deck. A sense source of 0 V stands in every element's way, so that its current can be
 * asked for. Transistors are the simulator's own, with the figures that make them ours.
 * @param point where the simulator's search begins; by default it finds its own way
 */
export function deckOf(
  network: Network,
  title: string,
  point?: OperatingPoint,
): { text: string; asked: readonly Asked[] } {
  const lines: string[] = [title];
  const asked: Asked[] = [];
  const names = new Set<string>();
  for (const element of network.elements) {
    const written = write(element);
    lines.push(...written.lines);
    for (const [name, expression] of Object.entries(written.amps)) {
      asked.push({ expression, kind: 'element', name });
    }
    for (const node of written.nodes) names.add(node);
  }
  for (const name of names) {
    if (name !== network.ground) {
      asked.push({ expression: `v(${name})`, kind: 'node', name });
      if (point) lines.push(`.nodeset v(${name})=${exact(point.nodes[name]?.typ ?? 0)}`);
    }
  }
  // Between drain, source and the far bulk the simulator's conductance for blocked junctions would carry more than all
  // leakage of ours; so it is made smaller where there is such a transistor.
  const bulk = network.elements.some((element) => element.type === 'transistor' && !element.gain);
  // Its floor for saturation currents, 1e-28 A unless told, would lift those of white lamps.
  lines.push(
    `.options temp=27 tnom=27 gmin=${bulk ? '1e-14' : '1e-12'} reltol=1e-6 abstol=1e-14 vntol=1e-9 itl1=1000 epsmin=1e-60`,
  );
  return { text: lines.join('\n'), asked };
}

function write(element: Element): Written {
  const { id } = element;
  const through = (from: string): string => `vs${id} ${from} s${id} 0`;
  const amps = { [id]: `i(vs${id})` };
  switch (element.type) {
    case 'resistor':
    case 'coil':
    case 'switch': {
      const { a, b, ohms } = element;
      if (element.type === 'switch' && !element.closed) {
        return { lines: [], nodes: [], amps: {} };
      }
      return { lines: [through(a), `r${id} s${id} ${b} ${exact(ohms.typ)}`], nodes: [a, b], amps };
    }
    case 'source': {
      const { plus, minus, ohms, volts } = element;
      const lines = [
        `vs${id} ${plus} t${id} 0`,
        `r${id} t${id} u${id} ${exact(ohms.typ)}`,
        `v${id} u${id} ${minus} ${exact(volts.typ)}`,
      ];
      // The simulator counts a source's current into its plus; ours counts out of `plus` for sources.
      return { lines, nodes: [plus, minus], amps: { [id]: `-i(vs${id})` } };
    }
    case 'current': {
      const { from, to, amps: flow } = element;
      return { lines: [through(from), `i${id} s${id} ${to} ${exact(flow.typ)}`], nodes: [from, to], amps };
    }
    case 'diode': {
      const { anode, cathode, volts, atAmps, breakdownVolts, breakdownAmps = 0.005 } = element;
      const lines = [
        through(anode),
        `d${id} s${id} ${cathode} m${id}`,
        `.model m${id} d(is=${exact(makeJunction(volts.typ, atAmps).saturationAmps)} n=${IDEALITY})`,
      ];
      if (breakdownVolts) {
        const { saturationAmps } = makeJunction(SHIFT_VOLTS, breakdownAmps);
        lines.push(
          `vz${id} ${cathode} z${id} ${exact(breakdownVolts.typ - SHIFT_VOLTS)}`,
          `dz${id} z${id} s${id} mz${id}`,
          `.model mz${id} d(is=${exact(saturationAmps)} n=${IDEALITY})`,
        );
      }
      return { lines, nodes: [anode, cathode], amps };
    }
    case 'transistor': {
      const { collector, emitter, control, channel, volts, ohms, gain } = element;
      const nodes = [collector, emitter, control];
      if (gain) {
        const { saturationAmps } = makeJunction(volts.typ, element.atAmps ?? 0.01, THERMAL_VOLTS);
        const model = `is=${exact(saturationAmps)} bf=${exact(gain.typ)} br=${REVERSE_GAIN} rc=${exact(ohms.typ)}`;
        const lines = [
          through(collector),
          `vb${id} ${control} b${id} 0`,
          `q${id} s${id} b${id} ${emitter} m${id}`,
          `.model m${id} ${channel}p${channel}(${model})`.replace('ppp', 'pnp'),
        ];
        return { lines, nodes, amps: { ...amps, [`${id}:control`]: `i(vb${id})` } };
      }
      const sign = channel === 'n' ? 1 : -1;
      const full = element.fullVolts ?? 2 * volts.max;
      const model = `level=1 vto=${exact(sign * volts.typ)} kp=${exact(1 / (ohms.typ * (full - volts.typ)))}`;
      const lines = [
        through(collector),
        `vu${id} u${id} 0 ${-sign * BULK_VOLTS}`,
        `m${id} s${id} ${control} ${emitter} u${id} m${id}`,
        `.model m${id} ${channel}mos(${model} gamma=0 lambda=0)`,
      ];
      return { lines, nodes, amps };
    }
  }
}

function exact(value: number): string {
  return value.toExponential(15);
}
