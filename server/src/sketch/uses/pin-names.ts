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
  const order = new Map(files.map(({ file }, index) => [file, index]));
  const rank = (span: Span) => order.get(span.file) ?? files.length;
  return [...named.values()]
    .sort((a, b) => rank(a.span) - rank(b.span) || a.span.start - b.span.start)
    .map(({ definition, span, pins }) => ({
      name: definition.name,
      pins: [...pins].sort((a, b) => a - b),
      definition: span,
      references: referencesTo(files, definition, span),
    }));
}

function referencesTo(
  files: readonly { readonly file: string; readonly form: FileForm }[],
  definition: Definition,
  span: Span,
): Span[] {
  const found: Span[] = [];
  const { name, kind } = definition;
  for (const { file, form } of files) {
    for (const placed of form.units) {
      const places = namesOfUnit(placed.unit).get(name);
      if (places === undefined) continue;
      const isHome = file === span.file && holds(placed, span);
      // A local's name means something else in every other function.
      if (kind === 'local' && !isHome) continue;
      if ((kind === 'global' || kind === 'entry') && !isHome && hides(placed, name)) continue;
      for (const place of places) {
        const start = placed.start + place.start;
        if (start === span.start && file === span.file) continue;
        if (kind === 'local' && place.qualified) continue;
        found.push({ file, start, end: start + name.length });
      }
    }
  }
  return found;
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
