/** What lifts a net over a voltage. */
import type { Subject } from '../subject';
import { railsAmong, reach } from './conduction';
import type { VoltsAt } from './input-volts';
import { viewOf } from './views';

/** What holds the net above a limit: outputs that are high, pins that drive, supplies. Junctions that block do not. */
export function liftedBy(
  subject: Subject,
  net: string,
  { state }: VoltsAt,
  stands: number,
  own: string,
): string[] {
  const passing = {
    switches: state?.switches ?? {},
    resistances: true,
    sources: false,
    diodes: 'up',
  } as const;
  const nets = reach(subject, net, passing);
  const outputs = subject.placed.filter(
    ({ id, nets: ends }) => state?.settings[id] === 'high' && nets.has(ends[0]),
  );
  const pins = subject.pins.filter(({ pin, net: at }) => state?.drives[pin.id] === 'high' && nets.has(at.id));
  const rails = railsAmong(subject, nets).filter((id) => (viewOf(subject, id)?.pin.volts?.max ?? 0) > stands);
  const supplies = subject.placed.filter(
    ({ primitive, nets: ends }) =>
      primitive.type === 'source' && primitive.volts.max > stands && nets.has(ends[0]),
  );
  const names = [...outputs.map(({ part }) => part), ...pins.map(({ pin }) => pin.id)];
  const fed = [...rails, ...supplies.map(({ part }) => part)];
  return [...new Set(names.length > 0 ? names : fed)].filter((name) => name !== own);
}
