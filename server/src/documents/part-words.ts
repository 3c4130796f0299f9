/** What a part is, in words for lists: its kind, the figures that the user chose, and a resistor's code and bands. */
import type { Build, Part, Primitive } from '../base/build';
import { formatQuantity, formatTolerance } from '../base/quantity';
import { type BandColour, bandsFor, letterCode } from '../circuit';

type Resistor = Extract<Primitive, { type: 'resistor' }>;

/** The resistor that a part is and nothing else; undefined for any other part. */
export function resistorOf(part: Part): Resistor | undefined {
  const [inside] = part.inside;
  return part.kind === 'resistor' && part.inside.length === 1 && inside?.type === 'resistor'
    ? inside
    : undefined;
}

export interface ResistorWords {
  readonly value: string;
  /** "470R"; empty where the code has none. */
  readonly code: string;
  readonly bands: readonly BandColour[];
  readonly tolerance: string;
  readonly power: string;
}

/** Value, code, bands, tolerance and rating of a resistor. */
export function resistorWords(build: Build, resistor: Resistor): ResistorWords {
  const { typ, max } = resistor.ohms;
  const own = typ > 0 ? Math.round(((max - typ) / typ) * 1e4) / 1e4 : build.stock.tolerance;
  const bands = bandsFor(typ, own);
  return {
    value: formatQuantity(typ, 'ohm'),
    code: letterCode(typ, 'ohm') ?? '',
    bands: bands.ok ? bands.bands : [],
    tolerance: formatTolerance(own),
    power: formatQuantity(resistor.maxWatts ?? build.stock.watts, 'W'),
  };
}

const notChosen: ReadonlySet<string> = new Set(['kind', 'purpose', 'note', 'subassembly', 'mount']);

/** What the manifest says of a part beyond its kind: "colour green", "volts 4.8, capacity 2000 mAh". */
export function chosenWords(part: Part): string {
  return Object.keys(part.valueSpans)
    .filter((key) => !notChosen.has(key))
    .flatMap((key) => {
      const value = part.parameters[key];
      return value === undefined ? [] : [`${spaced(key)} ${value}`];
    })
    .join(', ');
}

/** "forwardVolts" as "forward volts". */
function spaced(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** "resistor, 470 ohm" or "LED, colour green". */
export function partWords(part: Part): string {
  const resistor = resistorOf(part);
  const chosen = resistor ? formatQuantity(resistor.ohms.typ, 'ohm') : chosenWords(part);
  return chosen === '' ? part.title : `${part.title}, ${chosen}`;
}

/** Parts that one buys as several of the same. */
export interface PartGroup {
  readonly parts: readonly Part[];
  readonly first: Part;
}

/** Groups in the order of their first part. */
export function groupParts(parts: readonly Part[]): readonly PartGroup[] {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    const own = Object.entries(part.parameters).sort(([a], [b]) => (a < b ? -1 : 1));
    const key = JSON.stringify([part.kind, own]);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first ? [{ parts: group, first }] : [];
  });
}
