/** The steps of one unit: prepare, solder, sleeve, test, mount, and why its values are what they are. */
import type { Part, Wire } from '../base/build';
import { formatQuantity } from '../base/quantity';
import { listHookup, needsSleeve } from './hookup-list';
import { type Block, type PaperInput, type Piece, type Text, textOf } from './paper';
import { partWords, resistorOf, resistorWords } from './part-words';
import { partRows, type TestRow } from './power-off-tests';
import { reasonsFor } from './reasons';
import type { Unit } from './subassemblies';
import { boardFirst, endWords, listWords, stripOf, wireWords } from './words';

/** What the units share and only one look through the whole build finds. */
export interface GuideContext {
  readonly input: PaperInput;
  /** Number of a wire in the hookup list, by its id. */
  readonly numbers: ReadonlyMap<string, number>;
  readonly rows: readonly TestRow[];
  /** The unit whose wire is the last at a joint that gets a sleeve, by the joint's name. */
  readonly closing: ReadonlyMap<string, Unit>;
}

export function guideContext(input: PaperInput, units: readonly Unit[]): GuideContext {
  const numbers = new Map(listHookup(input.build).map(({ wire, number }) => [wire, number]));
  const closing = new Map<string, Unit>();
  for (const unit of units) {
    for (const joint of jointsOf(input, unit.wires)) closing.set(joint, unit);
  }
  return { input, numbers, rows: partRows(input), closing };
}

/** Joints that get a sleeve, each once. */
function jointsOf({ build }: PaperInput, wires: readonly Wire[]): readonly string[] {
  const ends = wires.flatMap((wire) => wire.ends).filter((end) => needsSleeve(build, end));
  return [...new Set(ends.map(endWords))];
}

export function unitBlocks(context: GuideContext, unit: Unit): readonly Block[] {
  const { input } = context;
  const purposes = unit.parts.flatMap(({ id, purpose, note }) =>
    [purpose && `${id}: ${purpose}`, note && `${id}, note: ${note}`].flatMap((words) =>
      words ? [words] : [],
    ),
  );
  return [
    ...(purposes.length > 0 ? [{ kind: 'list', items: purposes } as const] : []),
    ...step('Prepare', prepare(input, unit)),
    ...step('Solder', solder(context, unit)),
    ...step('Sleeve', sleeve(context, unit)),
    ...step('Test', test(context, unit)),
    ...step('Mount', mount(unit)),
    ...why(input, unit.parts),
  ];
}

function step(title: string, items: readonly Text[]): readonly Block[] {
  return items.length === 0
    ? []
    : [
        { kind: 'heading', text: title },
        { kind: 'ticks', items },
      ];
}

function prepare(input: PaperInput, { parts, wires }: Unit): readonly Text[] {
  const { build } = input;
  const takes = parts.map((part): Text => {
    const resistor = resistorOf(part);
    const bands = resistor ? resistorWords(build, resistor).bands : [];
    const head: Piece[] = ['Take ', { bold: part.id }, `: ${partWords(part)}`];
    if (bands.length > 0) head.push(` (${bands.join(', ')})`);
    return [...head, '.', ...tellPieces(part)];
  });
  const cuts = wires.length === 0 ? [] : [cutWords(input, wires)];
  return [...takes, ...cuts];
}

/** How to tell the terminals apart; silent where it does not matter. */
function tellPieces(part: Part): readonly Piece[] {
  const told = part.terminals.filter(({ tell, polarity }) => tell !== undefined || polarity !== undefined);
  if (told.length === 0) return part.terminals.length === 2 ? [' Either way round.'] : [];
  return told.flatMap(({ id, tell, polarity }): Piece[] => {
    const sign = polarity === undefined || id === polarity ? '' : ` (${polarity})`;
    return [' ', { bold: `${part.id}.${id}` }, `${sign}: ${tell ?? 'no mark is known; look it up'}.`];
  });
}

/** Equal wires are cut together. */
function cutWords({ build }: PaperInput, wires: readonly Wire[]): Text {
  const sorts = new Map<string, { readonly pieces: readonly Piece[]; count: number }>();
  for (const wire of wires) {
    const open = wire.length === undefined ? [', length to be measured'] : [];
    const pieces = [...wireWords(build, wire), ...open];
    const key = JSON.stringify(pieces);
    const known = sorts.get(key);
    if (known) known.count += 1;
    else sorts.set(key, { pieces, count: 1 });
  }
  const list = [...sorts.values()].flatMap(({ pieces, count }, index): Piece[] => [
    ...(index > 0 ? ['; '] : []),
    ...(count > 1 ? [`${count} \u00d7 `] : []),
    ...pieces,
  ]);
  const strips = [...new Set(wires.map((wire) => formatQuantity(stripOf(build, wire), 'm')))];
  return ['Cut ', ...list, `. Strip ${listWords(strips)} at each end, twist and tin.`];
}

function solder({ input, numbers }: GuideContext, { wires }: Unit): readonly Text[] {
  const sleeved = wires.some(({ ends }) => ends.some((end) => needsSleeve(input.build, end)));
  const first = sleeved ? ['Slip the sleeves over the wires first: afterwards they no longer go on.'] : [];
  return [
    ...first,
    ...wires.map((wire): Text => {
      const [from, to] = boardFirst(wire);
      const note = wire.note === undefined ? '' : ` (${wire.note})`;
      const number = numbers.get(wire.id) ?? 0;
      return [
        { bold: `No. ${number}` },
        ': ',
        ...wireWords(input.build, wire),
        ` from ${endWords(from)} to ${endWords(to)}${note}.`,
      ];
    }),
  ];
}

/** A joint that a later unit adds a wire to is covered then, for a shrunk sleeve would have to be cut off again. */
function sleeve({ input, closing }: GuideContext, unit: Unit): readonly Text[] {
  const joints = jointsOf(input, unit.wires);
  const now = joints.filter((joint) => closing.get(joint) === unit);
  const later = joints.filter((joint) => closing.get(joint) !== unit);
  return [
    ...(now.length > 0
      ? [`Push the sleeves over the joints ${listWords(now)} and shrink them. No bare metal is left.`]
      : []),
    ...later.map(
      (joint) => `Leave ${joint} open for now: ${closing.get(joint)?.title ?? ''} adds a wire there.`,
    ),
  ];
}

function test({ rows }: GuideContext, { parts, wires }: Unit): readonly Text[] {
  const own = new Set(parts.map(({ id }) => id));
  const measured = rows
    .filter(({ about }) => about.some((id) => own.has(id)))
    .map(({ between, expect }) => `${between}: ${expect}.`);
  if (wires.length === 0) return measured;
  return ['Every new wire sounds from end to end, and a gentle pull loosens no joint.', ...measured];
}

function mount({ parts }: Unit): readonly Text[] {
  return parts.flatMap(({ id, mount: how }) => (how === undefined ? [] : [`${id}: ${how}`]));
}

function why(input: PaperInput, parts: readonly Part[]): readonly Block[] {
  const reasons = parts.flatMap((part) => {
    const lines = reasonsFor(input, part);
    return lines.length === 0 ? [] : [lines.join(' ')];
  });
  return reasons.length === 0 ? [] : [{ kind: 'heading', text: 'Why these values' }, ...reasons.map(textOf)];
}
