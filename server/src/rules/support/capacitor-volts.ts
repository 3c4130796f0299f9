/** Volts over each capacitor, in the states of the region that both its ends are in. */
import { exactly, type Range } from '../../base/range';
import type { Placed, StatePoint, Subject } from '../subject';
import { voltsOf } from './volts';

export type Capacitor = Placed & { readonly primitive: Extract<Placed['primitive'], { type: 'capacitor' }> };

export interface ChargedCapacitor {
  readonly capacitor: Capacitor;
  /** From the second end up to the first. */
  readonly volts: Range;
  readonly state: string;
}

/** Each of the user's capacitors in each state whose volts are known. */
export function chargedCapacitors(subject: Subject): readonly ChargedCapacitor[] {
  return subject.placed.flatMap((placed) => {
    if (placed.onBoard || placed.primitive.type !== 'capacitor') return [];
    const capacitor = placed as Capacitor;
    const free = placed.nets.filter((net) => subject.rails[net] === undefined);
    const regions = new Set(free.map((net) => subject.regions.find(({ nets }) => nets.includes(net))));
    const [region] = regions;
    if (regions.size > 1) return [];
    const points: readonly (StatePoint | undefined)[] = region ? subject.points(region) : [undefined];
    return points.flatMap((state) => {
      const volts = across(subject, placed, state);
      return volts ? [{ capacitor, volts, state: state?.words ?? '' }] : [];
    });
  });
}

function across(subject: Subject, { nets }: Placed, state: StatePoint | undefined): Range | undefined {
  const at = (net: string) => (state ? voltsOf(subject, state, net) : railVolts(subject, net));
  const [a, b] = [at(nets[0]), at(nets[1])];
  return a && b ? { min: a.min - b.max, typ: a.typ - b.typ, max: a.max - b.min } : undefined;
}

function railVolts(subject: Subject, net: string): Range | undefined {
  const pin = subject.pins.find((view) => view.pin.id === subject.rails[net])?.pin;
  return pin?.type === 'ground' ? exactly(0) : pin?.volts;
}
