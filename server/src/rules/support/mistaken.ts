/**
 * Pins that the sketch names by a number which means another pin than the one that was wired: the number printed on the
 * board, or the number of a pin where the call counts interrupt lines. The rules on unwired and idle pins leave these
 * alone, since the wrong number is the one thing to be told.
 */
import type { PinUse } from '../../base/pin-use';
import type { PinView, Subject } from '../subject';
import { misplacedParts, wrongPorts } from './bus-wiring';
import { hasUseOnBoard } from './views';

export interface Mistaken {
  readonly use: PinUse;
  /** Pin that the number means. Absent: none. */
  readonly named?: PinView;
  /** Pin that was meant. */
  readonly meant: PinView;
  /** The number as given. */
  readonly number: number;
}

/** Numbers that mean one pin to the core and are printed beside another, which is wired and never used. */
export function printedNumbers(subject: Subject): readonly Mistaken[] {
  const found: Mistaken[] = [];
  const idle = subject.pins.filter(
    ({ pin, wires, uses }) => pin.number !== undefined && wires.length > 0 && uses.length === 0,
  );
  if (idle.length === 0) return found;
  for (const named of subject.pins) {
    const { number } = named.pin;
    if (number === undefined || named.wires.length > 0 || named.uses.length === 0) continue;
    // A lamp of the board itself is reason enough to write to its pin.
    const writes = named.uses.some((use) => use.action === 'write' || use.action === 'pwm');
    if (writes && hasUseOnBoard(subject, named)) continue;
    const printed = `D${number}`;
    const meant = idle.find(
      ({ pin }) => pin !== named.pin && (pin.id === printed || pin.names.includes(printed)),
    );
    if (!meant || meant.pin.number === number) continue;
    const use = named.uses.find(({ action, pins }) => {
      return action !== 'bus' && pins.kind === 'known' && pins.values.length === 1;
    });
    if (use) found.push({ use, named, meant, number });
  }
  return found;
}

/** Pin numbers given where interrupt lines are counted. */
export function mistakenLines(subject: Subject): readonly Mistaken[] {
  const found: Mistaken[] = [];
  for (const use of subject.facts.uses) {
    const [number, ...others] = use.lines ?? [];
    if (use.action !== 'interrupt' || number === undefined || others.length > 0) continue;
    const meant = subject.pins.find(({ pin }) => pin.number === number);
    if (!meant) continue;
    if (use.pins.kind === 'unknown') {
      found.push({ use, meant, number });
      continue;
    }
    const named = subject.pins.find(
      ({ pin }) => use.pins.kind === 'known' && pin.number === use.pins.values[0],
    );
    // A line is a fair thing to ask for: only the wiring says that its number was meant for a pin's.
    if (!named || named === meant || named.wires.length > 0 || meant.wires.length === 0) continue;
    if (meant.pin.interrupt === undefined) continue;
    found.push({ use, named, meant, number });
  }
  return found;
}

const store = new WeakMap<Subject, ReadonlySet<PinView>>();

/** True where a pin is one end of such a mistake. */
export function isMistaken(subject: Subject, view: PinView): boolean {
  let ends = store.get(subject);
  if (!ends) {
    const all = [...printedNumbers(subject), ...mistakenLines(subject)];
    ends = new Set(all.flatMap(({ named, meant }) => (named ? [named, meant] : [meant])));
    store.set(subject, ends);
  }
  return ends.has(view);
}

/** True where another rule tells what is wrong with the number or the place of a pin. */
export function isToldElsewhere(subject: Subject, view: PinView): boolean {
  const { takenBy } = view.pin;
  return (
    (takenBy !== undefined && !takenBy.free) ||
    isMistaken(subject, view) ||
    misplacedParts(subject).some(({ ends }) => ends.some(({ end }) => end.pin === view)) ||
    wrongPorts(subject).some((one) => one.pins.includes(view))
  );
}
