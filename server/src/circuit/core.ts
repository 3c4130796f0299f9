/**
 * The few elements that the equations know, and how all others come down to them: a coil is its resistance, a contact
 * is a small one or nothing, and a bipolar transistor is its two junctions between a collector resistance and an
 * ammeter in the base. So a new kind of element costs a few lines here and none in the equations.
 */
import type { Element } from '../base/circuit';
import { exactly, type Range } from '../base/range';

type Of<Type extends Element['type']> = Extract<Element, { readonly type: Type }>;

export type CoreElement =
  | Of<'resistor'>
  | Of<'source'>
  | Of<'current'>
  | Of<'diode'>
  | {
      readonly type: 'bipolar';
      readonly id: string;
      readonly base: string;
      readonly collector: string;
      readonly emitter: string;
      readonly channel: 'n' | 'p';
      readonly volts: Range;
      readonly atAmps: number;
      readonly gain: Range;
    }
  | {
      readonly type: 'field-effect';
      readonly id: string;
      readonly gate: string;
      readonly drain: string;
      readonly source: string;
      readonly channel: 'n' | 'p';
      readonly volts: Range;
      readonly ohms: Range;
      /** Gate volts at which the channel has its `ohms`. */
      readonly fullVolts: number;
    };

/** Collector current of a base-emitter voltage without one, amperes (small transistors' usual test current). */
const COLLECTOR_AMPS = 0.01;
/** Test current of a breakdown voltage without one, amperes (common for half-watt Zener diodes, from memory). */
const BREAKDOWN_AMPS = 0.005;

const INNER = ' inner ';

/** True for names that only the inside of an element has. */
export function isInner(name: string): boolean {
  return name.includes(INNER);
}

/** The name of the element that an inner name belongs to. */
export function ownerOf(name: string): string {
  return name.split(INNER)[0] ?? name;
}

/** Gate volts at which a field-effect transistor's resistance holds. */
export function fullVoltsOf(element: Of<'transistor'>): number {
  return element.fullVolts ?? 2 * element.volts.max;
}

/** An element as core elements; an open contact is none. Switches must stand as they are to be counted. */
export function coreElements(element: Element): readonly CoreElement[] {
  const { id } = element;
  switch (element.type) {
    case 'coil': {
      const { a, b, ohms } = element;
      return [{ type: 'resistor', id, a, b, ohms }];
    }
    case 'switch': {
      const { a, b, ohms } = element;
      return element.closed ? [{ type: 'resistor', id, a, b, ohms }] : [];
    }
    case 'diode':
      return element.breakdownVolts === undefined || element.breakdownAmps !== undefined
        ? [element]
        : [{ ...element, breakdownAmps: BREAKDOWN_AMPS }];
    case 'transistor':
      return transistorElements(element);
    default:
      return [element];
  }
}

function transistorElements(element: Of<'transistor'>): readonly CoreElement[] {
  const { id, collector, emitter, control, channel, volts, ohms, gain } = element;
  if (gain === undefined) {
    const fullVolts = fullVoltsOf(element);
    return [
      {
        type: 'field-effect',
        id,
        gate: control,
        drain: collector,
        source: emitter,
        channel,
        volts,
        ohms,
        fullVolts,
      },
    ];
  }
  const base = `${id}${INNER}base`;
  const inner = `${id}${INNER}collector`;
  const atAmps = element.atAmps ?? COLLECTOR_AMPS;
  return [
    { type: 'bipolar', id, base, collector: inner, emitter, channel, volts, atAmps, gain },
    { type: 'resistor', id: inner, a: collector, b: inner, ohms },
    // An ideal source of 0 V is an ammeter: its current leaves `plus` and enters the base.
    {
      type: 'source',
      id: `${id}:control`,
      plus: base,
      minus: control,
      volts: exactly(0),
      ohms: exactly(0),
    },
  ];
}

/** The nodes that an element touches; of a field-effect transistor the gate comes last and is fed by nobody. */
export function nodesOf(element: CoreElement): readonly string[] {
  switch (element.type) {
    case 'resistor':
      return [element.a, element.b];
    case 'source':
      return [element.plus, element.minus];
    case 'current':
      return [element.from, element.to];
    case 'diode':
      return [element.anode, element.cathode];
    case 'bipolar':
      return [element.base, element.collector, element.emitter];
    case 'field-effect':
      return [element.drain, element.source, element.gate];
  }
}

/** The nodes that an element ties to one another: a current pushes but does not hold, and a gate hangs free. */
export function tiedNodesOf(element: CoreElement): readonly string[] {
  switch (element.type) {
    case 'current':
      return [];
    case 'field-effect':
      return [element.drain, element.source];
    default:
      return nodesOf(element);
  }
}
