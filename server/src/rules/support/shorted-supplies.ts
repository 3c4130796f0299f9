/** Supplies that metal and contacts alone join to their own return, and which contacts do it. */
import { leverOf } from '../../base/primitive';
import type { Placed, Subject } from '../subject';
import { reach } from './conduction';
import { allClosed, groundNets, placedOf } from './supplies';

/** A supply and the nets its current goes back to. */
export interface Poles {
  readonly supply: string;
  readonly net: string;
  readonly returns: ReadonlySet<string>;
  readonly ground: string;
}

/** Supply pins that are wired, and sources among the parts. */
export function supplyPoles(subject: Subject): readonly Poles[] {
  const grounds = groundNets(subject);
  const ground = subject.pins.find(({ pin }) => pin.type === 'ground')?.pin.id ?? 'ground';
  const wired = subject.pins.filter(({ pin, wires }) => pin.type === 'supply' && wires.length > 0);
  return [
    ...wired.map(({ pin, net }) => ({ supply: pin.id, net: net.id, returns: grounds, ground })),
    ...placedOf(subject, 'source').map(({ part, nets, primitive }) => ({
      supply: part,
      net: nets[0],
      returns: new Set([nets[1]]),
      ground: `${part}.${primitive.ends[1]}`,
    })),
  ];
}

/** Parts whose switches make the short: none, one or two of them; undefined where nothing does. */
export function shortedBy(
  subject: Subject,
  net: string,
  returns: ReadonlySet<string>,
): readonly string[] | undefined {
  const reaches = (switches: Readonly<Record<string, 'open' | 'closed'>>) =>
    [...reach(subject, net, { switches, resistances: false, sources: false })].some((id) => returns.has(id));
  if (!reaches(allClosed(subject))) return undefined;
  const levers = new Map<string, Placed[]>();
  for (const element of placedOf(subject, 'switch')) {
    const key = `${element.part}/${leverOf(element.primitive)}`;
    levers.set(key, [...(levers.get(key) ?? []), element]);
  }
  const moved = (keys: readonly string[]) =>
    Object.fromEntries(
      keys.flatMap((key) =>
        (levers.get(key) ?? []).flatMap(({ id, primitive }) =>
          primitive.type === 'switch' ? [[id, primitive.rest === 'open' ? 'closed' : 'open'] as const] : [],
        ),
      ),
    );
  if (reaches({})) return [];
  const keys = [...levers.keys()];
  const partsOf = (chosen: readonly string[]) => [
    ...new Set(chosen.flatMap((key) => (levers.get(key) ?? []).map(({ part }) => part))),
  ];
  for (const key of keys) if (reaches(moved([key]))) return partsOf([key]);
  for (const [index, first] of keys.entries()) {
    for (const second of keys.slice(index + 1)) {
      if (reaches(moved([first, second]))) return partsOf([first, second]);
    }
  }
  return undefined;
}
