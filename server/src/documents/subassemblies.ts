/**
 * The units that somebody builds one after the other. The manifest may name them; else the parts that one signal joins
 * are one, since they are soldered and tested together. Ground and the board's supplies join everything and so nothing.
 */
import type { Build, Part, Wire } from '../base/build';
import { resistorOf } from './part-words';
import { boardFirst, listWords, sectionId } from './words';

export interface Unit {
  /** Name for its section. */
  readonly id: string;
  readonly title: string;
  readonly parts: readonly Part[];
  /** Wires that end on a part of it and on none of a later unit: part to part first, then those to the board. */
  readonly wires: readonly Wire[];
}

/** Units in the order in which their first parts are declared; wires from pin to pin come last, in one of their own. */
export function listUnits(build: Build): readonly Unit[] {
  const keyOf = unitKeys(build);
  const groups = new Map<string, Part[]>();
  for (const part of build.parts) {
    const key = keyOf(part);
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  const keys = [...groups.keys()];
  const places = new Map(build.parts.map((part) => [part.id, keys.indexOf(keyOf(part))]));
  const wires = new Map<number, Wire[]>();
  for (const wire of build.wires) {
    const own = wire.ends.flatMap((end) => (end.kind === 'terminal' ? [places.get(end.part) ?? -1] : []));
    const last = Math.max(-1, ...own);
    wires.set(last, [...(wires.get(last) ?? []), wire]);
  }
  const taken = new Set<string>();
  const units = [...groups].map(([key, parts], index): Unit => {
    const named = parts[0]?.subassembly;
    const title = named ?? titleOf(parts);
    const id = sectionId(`unit ${key.startsWith('named ') ? (named ?? '') : (parts[0]?.id ?? '')}`, taken);
    return { id, title, parts, wires: inwardFirst(wires.get(index) ?? []) };
  });
  const links = wires.get(-1) ?? [];
  return links.length === 0
    ? units
    : [...units, { id: sectionId('links', taken), title: 'Links on the board', parts: [], wires: links }];
}

/** "beacon with R1": what does something first, resistors behind. */
function titleOf(parts: readonly Part[]): string {
  const helpers = parts.filter((part) => resistorOf(part));
  const leads = parts.filter((part) => !resistorOf(part));
  const names = (list: readonly Part[]) => listWords(list.map(({ id }) => id));
  if (leads.length === 0) return names(helpers);
  return helpers.length === 0 ? names(leads) : `${names(leads)} with ${names(helpers)}`;
}

function inwardFirst(wires: readonly Wire[]): readonly Wire[] {
  const inward = (wire: Wire) => boardFirst(wire)[0].kind === 'terminal';
  return [...wires.filter(inward), ...wires.filter((wire) => !inward(wire))];
}

/** Which unit a part belongs to: that of its name, or that of the signals it hangs on. */
function unitKeys(build: Build): (part: Part) => string {
  const parents = new Map<string, string>();
  const find = (id: string): string => {
    let at = id;
    for (let up = parents.get(at); up !== undefined && up !== at; up = parents.get(at)) at = up;
    return at;
  };
  const rails = new Set(
    build.board.pins.filter(({ type }) => type === 'ground' || type === 'supply').map(({ id }) => id),
  );
  const free = new Set(build.parts.filter((part) => part.subassembly === undefined).map(({ id }) => id));
  for (const net of build.nets) {
    if (net.pins.some((pin) => rails.has(pin))) continue;
    const [first, ...others] = [...new Set(net.terminals.map(({ part }) => part))].filter((id) =>
      free.has(id),
    );
    if (first === undefined) continue;
    for (const other of others) parents.set(find(other), find(first));
  }
  return (part) => (part.subassembly === undefined ? `free ${find(part.id)}` : `named ${part.subassembly}`);
}
