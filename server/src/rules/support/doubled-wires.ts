/** Wires that join the same two ends as one before them. */
import type { End, Wire } from '../../base/build';
import type { Subject } from '../subject';

export interface DoubledWire {
  readonly wire: Wire;
  readonly first: Wire;
}

const store = new WeakMap<Subject, readonly DoubledWire[]>();

export function findDoubledWires(subject: Subject): readonly DoubledWire[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const seen = new Map<string, Wire>();
  const found: DoubledWire[] = [];
  for (const wire of subject.build.wires) {
    const key = wire.ends.map(nameOf).sort().join(' ');
    const first = seen.get(key);
    if (first) found.push({ wire, first });
    else seen.set(key, wire);
  }
  store.set(subject, found);
  return found;
}

/** Which hole a pin's wire sits in makes no difference to what it joins. */
function nameOf(end: End): string {
  return end.kind === 'pin' ? JSON.stringify([end.pin]) : JSON.stringify([end.part, end.terminal]);
}
