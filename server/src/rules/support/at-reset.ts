/**
 * Volts of a net while the chip is in reset: every pin is an input then, and only what is soldered holds a level. The
 * chip's own pull is counted towards the level that is wanted, so that a fault is told only where it cannot help.
 */
import type { Element } from '../../base/circuit';
import type { Primitive } from '../../base/primitive';
import { exactly, type Range } from '../../base/range';
import { elementsOfPart, solveNetwork } from '../../circuit';
import type { PinView, Placed, Region, Subject } from '../subject';
import { regionOf, viewOf } from './views';

const ground = '0';
const railOhms = exactly(0.01);

/** Primitives whose level at reset nobody knows, or that hold none. */
const silent: ReadonlySet<Primitive['type']> = new Set(['logic-output', 'load', 'capacitor']);

/**
 * Volts at a pin in reset; undefined where nothing soldered holds it.
 * @param moved ids of switches that a hand has put against their rest.
 */
export function voltsAtReset(
  subject: Subject,
  view: PinView,
  wanted: 'high' | 'low',
  moved: ReadonlySet<string> = new Set(),
): Range | undefined {
  const region = regionOf(subject, view.pin.id);
  const { board } = subject.build;
  const logic = viewOf(subject, board.logicRail)?.pin.volts;
  if (!region || !logic) return undefined;
  const rails = new Set<string>();
  const node = (net: string) => {
    const rail = subject.rails[net];
    if (rail === undefined) return net;
    if (viewOf(subject, rail)?.pin.type === 'ground') return ground;
    rails.add(net);
    return net;
  };
  const elements: Element[] = partsOf(region).flatMap(([part, placed]) => {
    const nets = new Map(placed.flatMap((element) => netsByTerminal(element)));
    return elementsOfPart(
      placed.map(({ primitive }) => primitive),
      {
        prefix: `${part}/`,
        nodeOf: (terminal) => node(nets.get(terminal) ?? `${part}.${terminal}`),
        moved: new Set(placed.filter(({ id }) => moved.has(id)).map(({ primitive }) => primitive.id)),
      },
    );
  });
  if (elements.length === 0) return undefined;
  for (const net of rails) {
    const volts = viewOf(subject, subject.rails[net] ?? '')?.pin.volts;
    if (volts)
      elements.push({
        type: 'source',
        id: `rail:${net}`,
        plus: net,
        minus: ground,
        volts: figures(volts),
        ohms: railOhms,
      });
  }
  const { pullUpOhms, pullDownOhms = pullUpOhms } = board.limits;
  const own = figures(wanted === 'high' ? pullUpOhms : pullDownOhms);
  elements.push({
    type: 'source',
    id: 'own-pull',
    plus: view.net.id,
    minus: ground,
    volts: wanted === 'high' ? figures(logic) : exactly(0),
    ohms: own,
  });
  const point = solveNetwork({ ground, elements });
  return point.converged ? point.nodes[view.net.id] : undefined;
}

function figures({ min, typ, max }: Range): Range {
  return { min, typ, max };
}

function partsOf(region: Region): readonly (readonly [string, readonly Placed[]])[] {
  const parts = new Map<string, Placed[]>();
  for (const element of region.elements) {
    if (silent.has(element.primitive.type)) continue;
    parts.set(element.part, [...(parts.get(element.part) ?? []), element]);
  }
  return [...parts];
}

function netsByTerminal({ primitive, nets, third }: Placed): readonly (readonly [string, string])[] {
  const own = [
    [primitive.ends[0], nets[0]],
    [primitive.ends[1], nets[1]],
  ] as const;
  const other =
    primitive.type === 'potentiometer'
      ? primitive.wiper
      : primitive.type === 'transistor'
        ? primitive.control
        : undefined;
  return other === undefined || third === undefined ? own : [...own, [other, third] as const];
}
