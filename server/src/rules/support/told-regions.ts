/** Regions whose currents mean nothing more: a short or a lamp without a resistor is the one thing to be told there. */
import type { Region, Subject } from '../subject';
import { findUnlimited } from './limiting';
import { findShorts } from './shorts';
import { lampsOf } from './views';

const store = new WeakMap<Subject, ReadonlySet<Region>>();

export function toldRegions(subject: Subject): ReadonlySet<Region> {
  let told = store.get(subject);
  if (!told) {
    const pins = new Set(findShorts(subject).map(({ view }) => view.pin.id));
    const lamps = new Set(findUnlimited(subject, lampsOf(subject)).map(({ lamp }) => lamp.id));
    told = new Set(
      subject.regions.filter(
        (region) =>
          region.pins.some((pin) => pins.has(pin)) || region.elements.some(({ id }) => lamps.has(id)),
      ),
    );
    store.set(subject, told);
  }
  return told;
}
