/**
 * Regions whose currents mean nothing more: a short, a lamp without a resistor, or a diode that shorts its winding is
 * the one thing to be told there.
 */
import type { Region, StatePoint, Subject } from '../subject';
import { findUnlimited } from './limiting';
import { findShorts } from './shorts';
import { lampsOf } from './views';
import { findWindings } from './windings';

const store = new WeakMap<Subject, ReadonlySet<Region>>();

export function toldRegions(subject: Subject): ReadonlySet<Region> {
  let told = store.get(subject);
  if (!told) {
    const pins = new Set(findShorts(subject).map(({ view }) => view.pin.id));
    const lamps = new Set(findUnlimited(subject, lampsOf(subject)).map(({ lamp }) => lamp.id));
    const coils = new Set(
      findWindings(subject).flatMap(({ coil, reversed }) => (reversed.length > 0 ? [coil.id] : [])),
    );
    told = new Set(
      subject.regions.filter(
        (region) =>
          region.elements.some(({ id }) => coils.has(id)) ||
          region.pins.some((pin) => pins.has(pin)) ||
          region.elements.some(({ id }) => lamps.has(id)),
      ),
    );
    store.set(subject, told);
  }
  return told;
}

/** True in a state that destroys a pin or a junction: what else is carried then is told there. */
export function isOverdriven(subject: Subject, region: Region, { point, drives }: StatePoint): boolean {
  const most = subject.build.board.limits.pinAbsolute.max;
  const amps = (id: string) => Math.abs(point.amps[id]?.typ ?? 0);
  return (
    Object.keys(drives).some((pin) => amps(`pin:${pin}`) > most) ||
    region.elements.some(
      ({ id, primitive }) =>
        primitive.type === 'diode' && primitive.maxAmps !== undefined && amps(id) > primitive.maxAmps,
    )
  );
}
