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

/** Lamps between two stiff nodes (rails, batteries, driving pins) with no resistance on either side. */
export function findUnlimited(subject: Subject, lamps: readonly Placed[]): readonly UnlimitedLamp[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const found: UnlimitedLamp[] = [];
  const closed = Object.fromEntries(
    subject.placed
      .filter((element) => element.primitive.type === 'switch')
      .map((element) => [element.id, 'closed'] as const),
  );
  const passing = { switches: closed, resistances: false, sources: false };
  for (const lamp of lamps) {
    const side = (net: string, diodes: 'up' | 'down') =>
      stiffNodes(subject, reach(subject, net, { ...passing, diodes, without: lamp.id }));
    const above = side(lamp.nets[0], 'up');
    const below = side(lamp.nets[1], 'down');
    if (above.all.size === 0 || below.all.size === 0) continue;
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
  for (const element of subject.placed) {
    if (element.primitive.type !== 'source') continue;
    if (nets.has(element.nets[0])) all.add(`${element.id}+`);
    if (nets.has(element.nets[1])) all.add(`${element.id}-`);
  }
  for (const view of subject.pins) {
    if (!isSignal(view) || !nets.has(view.net.id) || subject.rails[view.net.id] !== undefined) continue;
    if (!view.drives.includes('high') && !view.drives.includes('low')) continue;
    all.add(view.pin.id);
    pins.push(view.pin.id);
  }
  return { all, pins };
}
