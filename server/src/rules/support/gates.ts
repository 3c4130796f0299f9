/** Field-effect transistors that a pin drives, and the volts their gates get when they are to conduct. */
import type { Range } from '../../base/range';
import type { PinView, Placed, Subject } from '../subject';
import { reach } from './conduction';
import { isSignal } from './views';
import { voltsOf } from './volts';

export type Transistor = Placed & {
  readonly primitive: Extract<Placed['primitive'], { type: 'transistor' }>;
};

export interface GateDrive {
  readonly transistor: Transistor;
  readonly view: PinView;
  /** Volts between gate and source, above zero in the direction that opens it, in the state that opens it most. */
  readonly volts: Range;
  /** Amperes between drain and source in that state, as they would be with the transistor full on. */
  readonly amps: number;
}

/** Field-effect transistors of the user's parts with their source on a rail or a supply. */
export function fieldEffect(subject: Subject): readonly Transistor[] {
  return subject.placed.filter(
    (placed): placed is Transistor =>
      !placed.onBoard &&
      placed.primitive.type === 'transistor' &&
      placed.primitive.gain === undefined &&
      placed.third !== undefined,
  );
}

/** Pins that reach a gate by resistors at most. */
export function pinsAtGate(subject: Subject, { third }: Transistor): readonly PinView[] {
  if (third === undefined) return [];
  const nets = reach(subject, third, { switches: {}, resistances: true, sources: false });
  return subject.pins.filter(
    (view) => isSignal(view) && nets.has(view.net.id) && subject.rails[view.net.id] === undefined,
  );
}

export function gateDrives(subject: Subject): readonly GateDrive[] {
  return fieldEffect(subject).flatMap((transistor) => {
    const { primitive, third = '', nets } = transistor;
    const region = subject.regions.find(({ elements }) => elements.includes(transistor));
    const pins = pinsAtGate(subject, transistor);
    const opening = primitive.channel === 'n' ? 'high' : 'low';
    const view = pins.find(({ drives }) => drives.includes(opening));
    if (!region || !view || pins.length !== 1) return [];
    let most: { readonly volts: Range; readonly amps: number } | undefined;
    for (const state of subject.points(region)) {
      if (state.drives[view.pin.id] !== opening) continue;
      const [gate, source] = [voltsOf(subject, state, third), voltsOf(subject, state, nets[1])];
      if (!gate || !source) continue;
      const volts =
        primitive.channel === 'n'
          ? { min: gate.min - source.max, typ: gate.typ - source.typ, max: gate.max - source.min }
          : { min: source.min - gate.max, typ: source.typ - gate.typ, max: source.max - gate.min };
      const amps = Math.abs(state.point.amps[transistor.id]?.typ ?? 0);
      if (!most || volts.typ > most.volts.typ) most = { volts, amps };
    }
    return most && most.volts.typ > 0 ? [{ transistor, view, ...most }] : [];
  });
}
