/**
 * Whether a bus that a pin can serve is in use, by what the sketch does: a call that opens it, or a library that nobody
 * describes and that may open it by itself.
 */
import { numbersOf } from '../../base/build';
import type { Subject } from '../subject';

/** The buses among roles: `i2c` of `i2c.sda`, `uart1` of `uart1.tx`. */
function busesOf(roles: readonly string[]): readonly string[] {
  return roles.flatMap((role) => /^((?:i2c|spi|uart|usb)\d*)\b/.exec(role)?.[1] ?? []);
}

const store = new WeakMap<Subject, ReadonlySet<string>>();

/** Buses that a use opens by one of their pins. */
function openedBuses(subject: Subject): ReadonlySet<string> {
  let opened = store.get(subject);
  if (opened === undefined) {
    const pins = new Set(
      subject.facts.uses.flatMap(({ action, pins: used }) => {
        // A transfer names the pins of whatever it goes over, which may be two pins of the sketch's own choice.
        return action === 'bus' && used.kind === 'known' ? used.values : [];
      }),
    );
    const views = subject.pins.filter(({ pin }) => numbersOf(pin).some((number) => pins.has(number)));
    opened = new Set(views.flatMap(({ pin }) => busesOf(pin.roles)));
    store.set(subject, opened);
  }
  return opened;
}

/** True for the pin by which the chip wakes itself, where the sketch sends it to sleep. */
export function wakesChip(subject: Subject, roles: readonly string[]): boolean {
  return roles.includes('wake') && subject.facts.uses.some(({ action }) => action === 'sleep');
}

/** True where one of these roles is on a bus that the sketch uses, or that a library unknown here may use. */
export function usesBus(subject: Subject, roles: readonly string[]): boolean {
  const buses = busesOf(roles);
  if (buses.length === 0) return false;
  if ((subject.facts.foreignHeaders ?? []).length > 0) return true;
  const opened = openedBuses(subject);
  return buses.some((bus) => opened.has(bus));
}
