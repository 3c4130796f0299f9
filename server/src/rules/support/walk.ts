/** A walk over nets by whatever primitives a question lets it pass: the general form of `reach`. */
import type { Placed, Subject } from '../subject';

const store = new WeakMap<readonly Placed[], ReadonlyMap<string, readonly Placed[]>>();

/** Primitives by the nets they touch. */
export function elementsAt(subject: Subject, net: string): readonly Placed[] {
  let byNet = store.get(subject.placed);
  if (!byNet) {
    const fresh = new Map<string, Placed[]>();
    for (const element of subject.placed) {
      for (const at of netsTouched(element)) {
        const list = fresh.get(at);
        if (list) list.push(element);
        else fresh.set(at, [element]);
      }
    }
    byNet = fresh;
    store.set(subject.placed, byNet);
  }
  return byNet.get(net) ?? [];
}

function netsTouched(element: Placed): ReadonlySet<string> {
  return new Set(element.third === undefined ? element.nets : [...element.nets, element.third]);
}

/**
 * Nets reached from some nets, those included.
 * @param passes says whether a primitive is passed.
 * @param ends says whether the walk stops at a net; the nets it starts from are left all the same.
 */
export function walk(
  subject: Subject,
  from: readonly string[],
  passes: (element: Placed) => boolean,
  ends: (net: string) => boolean = () => false,
): ReadonlySet<string> {
  const seen = new Set<string>(from);
  const front = [...from];
  for (let net = front.pop(); net !== undefined; net = front.pop()) {
    if (ends(net) && !from.includes(net)) continue;
    for (const element of elementsAt(subject, net)) {
      if (!passes(element)) continue;
      for (const other of netsTouched(element)) {
        if (seen.has(other)) continue;
        seen.add(other);
        front.push(other);
      }
    }
  }
  return seen;
}
