/** Names of the sketch that gave pin numbers, with every place where each of them stands. */
import type { PinName } from '../../base/pin-use';
import type { Span } from '../../base/span';
import type { Item } from '../form/ast';
import { itemsOfUnit, namesOfUnit } from '../form/program';
import type { FileForm, PlacedUnit } from '../syntax/plain-tree';
import type { Definition } from '../values/value';
import type { OriginUse } from './recorder';

interface Named {
  readonly definition: Definition;
  readonly span: Span;
  readonly pins: Set<number>;
}

/** All names out of the origins of all uses, in the order of their definitions. */
export function pinNamesOf(
  files: readonly { readonly file: string; readonly form: FileForm }[],
  origins: readonly OriginUse[],
): PinName[] {
  const named = new Map<string, Named>();
  for (const { definition, pins } of origins) {
    const { span } = definition;
    if (span === undefined) continue;
    const key = `${span.start} ${span.file}`;
    let one = named.get(key);
    if (one === undefined) {
      one = { definition, span, pins: new Set() };
      named.set(key, one);
    }
    for (const pin of pins) one.pins.add(pin);
  }
  const references = referencesTo(files, [...named.values()]);
  const order = new Map(files.map(({ file }, index) => [file, index]));
  const rank = (span: Span) => order.get(span.file) ?? files.length;
  return [...named.values()]
    .sort((a, b) => rank(a.span) - rank(b.span) || a.span.start - b.span.start)
    .map((one) => ({
      name: one.definition.name,
      pins: [...one.pins].sort((a, b) => a - b),
      definition: one.span,
      references: references.get(one) ?? [],
    }));
}

type NamedFile = { readonly file: string; readonly form: FileForm };

/** One pass over all files for all names together. */
function referencesTo(files: readonly NamedFile[], all: readonly Named[]): ReadonlyMap<Named, Span[]> {
  const found = new Map<Named, Span[]>();
  const wanted = new Map<string, Named[]>();
  for (const one of all) {
    const { name } = one.definition;
    const list = wanted.get(name);
    if (list === undefined) wanted.set(name, [one]);
    else list.push(one);
    found.set(one, []);
  }
  for (const { file, form } of files) {
    for (const placed of form.units) {
      for (const { name, places } of namesOfUnit(placed.unit)) {
        const list = wanted.get(name);
        if (list === undefined) continue;
        for (const one of list) addReferences(found.get(one) ?? [], one, file, placed, places);
      }
    }
  }
  return found;
}

function addReferences(
  found: Span[],
  { definition, span }: Named,
  file: string,
  placed: PlacedUnit,
  places: readonly number[],
): void {
  const { name, kind } = definition;
  const isHome = file === span.file && holds(placed, span);
  // A local's name means something else in every other function.
  if (kind === 'local' && !isHome) return;
  if ((kind === 'global' || kind === 'entry') && !isHome && hides(placed, name)) return;
  const inMembers = kind !== 'field' || isHome || hasMethod(placed);
  for (const place of places) {
    const isQualified = (place & 1) === 1;
    const start = placed.start + (place >> 1);
    if (start === span.start && file === span.file) continue;
    if (kind === 'local' && isQualified) continue;
    // A field is meant behind a dot, or bare inside of methods.
    if (!inMembers && !isQualified) continue;
    found.push({ file, start, end: start + name.length });
  }
}

/** True for `void Probe::begin() {}`. */
function hasMethod(placed: PlacedUnit): boolean {
  return itemsOfUnit(placed.unit).some((item) => item.kind === 'function' && item.owner !== '');
}

function holds(placed: PlacedUnit, span: Span): boolean {
  return placed.start <= span.start && span.end <= placed.start + placed.unit.node.end;
}

/** True where the unit is a function with a local or a parameter of that name. */
function hides(placed: PlacedUnit, name: string): boolean {
  const hidden = (item: Item): boolean =>
    (item.kind === 'function' && item.locals.includes(name)) ||
    (item.kind === 'conditional' && item.branches.some((branch) => branch.items.some(hidden)));
  return itemsOfUnit(placed.unit).some(hidden);
}
