/** What flows through each lamp in the state in which most flows through it. */
import type { Range } from '../../base/range';
import type { Placed, Region, StatePoint, Subject } from '../subject';
import { lampsOf } from './views';
import { voltsOf } from './volts';

export type Lamp = Placed & { readonly primitive: Extract<Placed['primitive'], { type: 'diode' }> };

export interface LitLamp {
  readonly lamp: Lamp;
  readonly region: Region;
  readonly state: StatePoint;
  readonly amps: Range;
  /** Volts forward across it in that state. */
  readonly volts: number;
}

const store = new WeakMap<Subject, readonly LitLamp[]>();

/** The lamps that get volts the right way round in some state. */
export function litLamps(subject: Subject): readonly LitLamp[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found = lampsOf(subject).flatMap((lamp) => {
    const region = subject.regions.find(({ elements }) => elements.includes(lamp));
    if (!region || lamp.primitive.type !== 'diode') return [];
    let most: LitLamp | undefined;
    for (const state of subject.points(region)) {
      const amps = state.point.amps[lamp.id];
      const [anode, cathode] = [voltsOf(subject, state, lamp.nets[0]), voltsOf(subject, state, lamp.nets[1])];
      if (!amps || !anode || !cathode) continue;
      const volts = anode.typ - cathode.typ;
      const better = !most || amps.typ > most.amps.typ || (amps.typ === most.amps.typ && volts > most.volts);
      if (better) most = { lamp: lamp as Lamp, region, state, amps, volts };
    }
    return most ? [most] : [];
  });
  store.set(subject, found);
  return found;
}
