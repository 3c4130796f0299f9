/** Whether both sides of a lamp lie on something stiff, with only resistors and other junctions on the way. */
import type { StatePoint, Subject } from '../subject';
import { railsAmong, reach } from './conduction';
import type { LitLamp } from './lit-lamps';

/** True where current can come to the anode from a supply, and go from the cathode to a ground. */
export function isFed(subject: Subject, lit: LitLamp): boolean {
  return isFedBy(subject, lit, true);
}

/** True where it is lit by way of the board's own parts alone: by a pull-up that is there for another reason. */
export function isLitByBoard(subject: Subject, lit: LitLamp): boolean {
  return isFedBy(subject, lit, true) && !isFedBy(subject, lit, false);
}

function isFedBy(subject: Subject, { lamp, state }: LitLamp, onBoard: boolean): boolean {
  const side = (index: 0 | 1, diodes: 'up' | 'down') =>
    reach(subject, lamp.nets[index], {
      switches: state.switches,
      resistances: true,
      diodes,
      sources: false,
      onBoard,
      without: lamp.id,
    });
  return isStiff(subject, state, side(0, 'up')) && isStiff(subject, state, side(1, 'down'));
}

function isStiff(subject: Subject, { drives }: StatePoint, nets: ReadonlySet<string>): boolean {
  if (railsAmong(subject, nets).length > 0) return true;
  if (
    subject.placed.some(
      ({ primitive: { type }, nets: ends }) => type === 'source' && ends.some((net) => nets.has(net)),
    )
  )
    return true;
  return subject.pins.some(
    ({ pin, net }) => nets.has(net.id) && (drives[pin.id] === 'high' || drives[pin.id] === 'low'),
  );
}
