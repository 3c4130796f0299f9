/**
 * Lamps with nothing in series that limits their current. A question of wiring, not of volts: a pin's own resistance
 * limits too, but it is no resistor anybody chose.
 */
import type { Placed, Subject } from '../subject';
import { reach } from './conduction';
import { isSignal } from './views';

export interface UnlimitedLamp {
  readonly lamp: Placed;
  /** Pins that light it, by id. */
  readonly pins: readonly string[];
}

const store = new WeakMap<Subject, readonly UnlimitedLamp[]>();

/** Lamps between two stiff nodes (rails, supplies, driving pins) with no resistance on either side. */
export function findUnlimited(subject: Subject, lamps: readonly Placed[]): readonly UnlimitedLamp[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found: UnlimitedLamp[] = [];
  const closed = Object.fromEntries(
    subject.placed
      .filter((element) => element.primitive.type === 'switch')
      .map((element) => [element.id, 'closed'] as const),
  );
  const passing = { switches: closed, resistances: false, diodes: true };
  for (const lamp of lamps) {
    const sides = lamp.nets.map((net) =>
      stiffNodes(subject, reach(subject, net, { ...passing, without: lamp.id })),
    );
    const [above, below] = sides;
    if (!above || !below || above.all.size === 0 || below.all.size === 0) continue;
    // The same single rail on both sides drives nothing.
    const nodes = new Set([...above.all, ...below.all]);
    if (nodes.size < 2) continue;
    found.push({ lamp, pins: [...new Set([...above.pins, ...below.pins])] });
  }
  store.set(subject, found);
  return found;
}

function stiffNodes(subject: Subject, nets: ReadonlySet<string>): { all: Set<string>; pins: string[] } {
  const all = new Set<string>();
  const pins: string[] = [];
  for (const net of nets) {
    const rail = subject.rails[net];
    if (rail !== undefined) all.add(rail);
  }
  for (const view of subject.pins) {
    if (!isSignal(view) || !nets.has(view.net.id) || subject.rails[view.net.id] !== undefined) continue;
    if (!view.drives.includes('high') && !view.drives.includes('low')) continue;
    all.add(view.pin.id);
    pins.push(view.pin.id);
  }
  return { all, pins };
}
