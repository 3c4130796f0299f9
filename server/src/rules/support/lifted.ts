/** What lifts a net over a voltage. */
import type { PinView, Subject } from '../subject';
import { railsAmong, reach } from './conduction';
import type { VoltsAt } from './input-volts';
import { sourceOhms } from './source-ohms';
import { regionOf, viewOf } from './views';
import { elementsAt } from './walk';

/**
 * What holds the net above a limit: outputs that are high, pins that drive, supplies. Of what comes through junctions only
 * that counts which their forward volts leave above it; junctions that block let nothing come.
 */
export function liftedBy(
  subject: Subject,
  net: string,
  { state }: VoltsAt,
  stands: number,
  own: string,
): string[] {
  const passing = { switches: state?.switches ?? {}, resistances: true, sources: false } as const;
  const drops = dropsTo(subject, net, passing);
  const dropAt = (at: string) => drops.get(at) ?? Number.POSITIVE_INFINITY;
  const outputs = subject.placed.filter(
    ({ id, nets }) => state?.settings[id] === 'high' && dropAt(nets[0]) === 0,
  );
  const pins = subject.pins.filter(
    ({ pin, net: at }) => state?.drives[pin.id] === 'high' && dropAt(at.id) === 0,
  );
  const rails = railsAmong(subject, drops.keys()).filter((id) => {
    const view = viewOf(subject, id);
    return view !== undefined && (view.pin.volts?.max ?? 0) - dropAt(view.net.id) > stands;
  });
  const supplies = subject.placed.filter(
    ({ primitive, nets }) => primitive.type === 'source' && primitive.volts.max - dropAt(nets[0]) > stands,
  );
  const names = [...outputs.map(({ part }) => part), ...pins.map(({ pin }) => pin.id)];
  const fed = [...rails, ...supplies.map(({ part }) => part)];
  return [...new Set(names.length > 0 ? names : fed)].filter((name) => name !== own);
}

/** Least forward volts on the way from each net that current can come from. */
function dropsTo(
  subject: Subject,
  from: string,
  passing: Parameters<typeof reach>[2],
): ReadonlyMap<string, number> {
  const drops = new Map<string, number>();
  const front: [net: string, drop: number][] = [[from, 0]];
  for (let step = front.pop(); step !== undefined; step = front.pop()) {
    const [start, drop] = step;
    for (const net of reach(subject, start, passing)) {
      if (drop >= (drops.get(net) ?? Number.POSITIVE_INFINITY)) continue;
      drops.set(net, drop);
      for (const { primitive, nets } of elementsAt(subject, net)) {
        if (primitive.type === 'diode' && nets[1] === net && subject.rails[net] === undefined)
          front.push([nets[0], drop + primitive.volts.min]);
      }
    }
  }
  return drops;
}

/** True where a resistor keeps the current within what the pin's protection stands: that is the cure and no fault. */
export function clampHolds(
  subject: Subject,
  view: PinView,
  { state, volts }: VoltsAt,
  stands: number,
): boolean {
  const region = regionOf(subject, view.pin.id);
  const clamp = subject.build.board.limits.clampAmps?.max;
  if (clamp === undefined || !state || !region) return false;
  const ohms = sourceOhms(subject, region, state, view.net.id);
  return ohms !== undefined && (volts.max - stands) / ohms.min < clamp;
}
