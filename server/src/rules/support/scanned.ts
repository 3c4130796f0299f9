/** Lamps between two pins are lit in turn, a row at a time: what flows at one moment is not what they carry for good. */
import type { Placed, Subject } from '../subject';
import { reach } from './conduction';
import { isSignal } from './views';

/** True where pins, by themselves or through transistors, decide on both sides of a lamp. */
export function isScanned(subject: Subject, lamp: Placed): boolean {
  return lamp.nets.every((net) => {
    const nets = reach(subject, net, { switches: {}, resistances: true, without: lamp.id });
    return (
      subject.pins.some(
        (view) => isSignal(view) && nets.has(view.net.id) && subject.rails[view.net.id] === undefined,
      ) ||
      subject.placed.some(
        ({ primitive, nets: ends }) =>
          (primitive.type === 'transistor' || primitive.type === 'logic-output') &&
          ends.some((end) => nets.has(end) && subject.rails[end] === undefined),
      )
    );
  });
}
