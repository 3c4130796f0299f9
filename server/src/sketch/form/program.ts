/** From a unit of plain syntax to its items, built once for each unit and kept as long as the unit lives. */
import type { Unit } from '../syntax/plain-tree';
import type { Item } from './ast';
import { BuildContext } from './context';
import { itemOf, itemsOf } from './items';
import { type NamePlaces, occurrences } from './tokens';

const built = new WeakMap<Unit, readonly Item[]>();
const namesIn = new WeakMap<Unit, readonly NamePlaces[]>();

/** The items of a unit. */
export function itemsOfUnit(unit: Unit): readonly Item[] {
  const known = built.get(unit);
  if (known !== undefined) return known;
  const build = new BuildContext(unit.text);
  // A text that is broken from the start has the error as its root.
  const items =
    unit.node.type === 'translation_unit' ? itemsOf(build, unit.node.children) : itemOf(build, unit.node);
  const all = build.hoisted.length === 0 ? items : [...items, ...build.hoisted];
  built.set(unit, all);
  return all;
}

/** Every name in a unit, with its places counted from the unit's start. */
export function namesOfUnit(unit: Unit): readonly NamePlaces[] {
  const known = namesIn.get(unit);
  if (known !== undefined) return known;
  const found = occurrences(unit.text);
  namesIn.set(unit, found);
  return found;
}
