/** Manifests and edits of manifests by chance, for properties over many of them. */
import fc from 'fast-check';

export interface RandomWire {
  readonly ends: readonly string[];
  readonly colours: readonly string[];
  readonly lengths: readonly string[];
  readonly note?: string;
}

export interface RandomBuild {
  readonly revision: string;
  readonly parts: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly wires: readonly RandomWire[];
}

const names = [
  'lamp',
  'R1',
  'R2',
  'horn',
  'b-2',
  'x_y',
  'a|b',
  '<i>',
  '=1',
  'knob',
  'pack',
  'mast',
  'Öse',
  'k9',
];
const kinds: readonly Readonly<Record<string, string>>[] = [
  { kind: 'led', colour: 'red' },
  { kind: 'led', colour: 'green', purpose: 'lit at night' },
  { kind: 'resistor', value: '470' },
  { kind: 'resistor', value: '1k' },
  { kind: 'push-button', purpose: 'rings', mount: 'in the lid' },
  { kind: 'push-button', purpose: 'stops' },
  { kind: 'buzzer', mount: 'glued' },
  { kind: 'potentiometer', value: '10k' },
];
const terminals: Readonly<Record<string, readonly string[]>> = {
  led: ['anode', 'cathode'],
  buzzer: ['+', '-'],
  potentiometer: ['1', '2', 'wiper'],
};
const pins = ['D2', 'D3', 'D7', 'D8', 'A0', 'A1', '5V', 'GND', 'GND', 'GND@left.14', 'GND@right.12', 'RST'];

const name = fc.constantFrom(...names);
const part = fc.constantFrom(...kinds);
const colour = fc.constantFrom('red', 'black', 'blue', 'green');
const length = fc.constantFrom('5 cm', '12 cm', '20 cm');

/** A part and a number that picks a terminal of whatever kind it turns out to be. */
interface LooseEnd {
  readonly id: string;
  readonly pick: number;
}
const end: fc.Arbitrary<string | LooseEnd> = fc.oneof(
  fc.constantFrom(...pins),
  fc.record({ id: fc.nat(20).map(String), pick: fc.nat(2) }),
);
interface LooseWire extends Omit<RandomWire, 'ends'> {
  readonly ends: readonly (string | LooseEnd)[];
}
const looseWire: fc.Arbitrary<LooseWire> = fc
  .record({
    ends: fc.oneof(
      { weight: 4, arbitrary: fc.array(end, { minLength: 2, maxLength: 2 }) },
      { weight: 1, arbitrary: fc.array(end, { minLength: 3, maxLength: 3 }) },
    ),
    colours: fc.array(colour, { minLength: 2, maxLength: 2 }),
    lengths: fc.array(length, { minLength: 2, maxLength: 2 }),
    note: fc.option(fc.constantFrom('twisted', 'behind the mast'), { nil: undefined, freq: 6 }),
  })
  .map(({ note, ...rest }) => (note === undefined ? rest : { ...rest, note }));

/** Ties a loose wire to the parts that there are; a path's middle is a whole part where it has two terminals. */
export function tie(parts: RandomBuild['parts'], { ends, ...rest }: LooseWire): RandomWire {
  const ids = Object.keys(parts);
  const tied = ends.map((each, index) => {
    if (typeof each === 'string') return each;
    const id = ids[Number(each.id) % ids.length] ?? 'none';
    const kind = parts[id]?.kind ?? '';
    const list = terminals[kind] ?? ['1', '2'];
    return index === 1 && ends.length === 3 && list.length === 2
      ? id
      : `${id}.${list[each.pick % list.length]}`;
  });
  return { ...rest, ends: tied };
}

export const randomBuild: fc.Arbitrary<RandomBuild> = fc
  .record({
    parts: fc.dictionary(name, part, { minKeys: 2, maxKeys: 9, noNullPrototype: true }),
    wires: fc.array(looseWire, { minLength: 4, maxLength: 18 }),
  })
  .map(({ parts, wires }) => ({ revision: 'A', parts, wires: wires.map((each) => tie(parts, each)) }));

/** One thing that somebody does to a manifest; `at` picks the part or wire. */
export type Edit =
  | { readonly do: 'add part'; readonly name: string; readonly part: Readonly<Record<string, string>> }
  | { readonly do: 'drop part' | 'drop wire' | 'wire to front'; readonly at: number }
  | { readonly do: 'rename part'; readonly at: number; readonly name: string }
  | { readonly do: 'change part'; readonly at: number; readonly part: Readonly<Record<string, string>> }
  | { readonly do: 'add wire' | 'change wire'; readonly at: number; readonly wire: LooseWire }
  | { readonly do: 'move end'; readonly at: number; readonly end: string | LooseEnd };

const at = fc.nat({ max: 30 });
export const randomEdits: fc.Arbitrary<Edit[]> = fc.array(
  fc.oneof(
    fc.record({ do: fc.constant('add part' as const), name, part }),
    fc.record({
      do: fc.constantFrom('drop part' as const, 'drop wire' as const, 'wire to front' as const),
      at,
    }),
    fc.record({ do: fc.constant('rename part' as const), at, name }),
    fc.record({ do: fc.constant('change part' as const), at, part }),
    fc.record({ do: fc.constantFrom('add wire' as const, 'change wire' as const), at, wire: looseWire }),
    fc.record({ do: fc.constant('move end' as const), at, end }),
  ),
  { minLength: 1, maxLength: 6 },
);

export function applyEdits(build: RandomBuild, edits: readonly Edit[]): RandomBuild {
  return { ...edits.reduce(applyEdit, build), revision: 'B' };
}

function applyEdit(build: RandomBuild, edit: Edit): RandomBuild {
  const { parts, wires } = build;
  const ids = Object.keys(parts);
  switch (edit.do) {
    case 'add part':
      return { ...build, parts: { ...parts, [edit.name]: edit.part } };
    case 'drop part': {
      const gone = ids[edit.at % ids.length];
      return { ...build, parts: Object.fromEntries(Object.entries(parts).filter(([id]) => id !== gone)) };
    }
    case 'rename part': {
      const old = ids[edit.at % ids.length];
      if (old === undefined || ids.includes(edit.name)) return build;
      const renamed = (each: string) =>
        each === old ? edit.name : each.startsWith(`${old}.`) ? edit.name + each.slice(old.length) : each;
      return {
        ...build,
        parts: Object.fromEntries(Object.entries(parts).map(([id, each]) => [renamed(id), each])),
        wires: wires.map((each) => ({ ...each, ends: each.ends.map(renamed) })),
      };
    }
    case 'change part': {
      const old = ids[edit.at % ids.length];
      return old === undefined ? build : { ...build, parts: { ...parts, [old]: edit.part } };
    }
    case 'add wire':
      return { ...build, wires: wires.toSpliced(edit.at % (wires.length + 1), 0, tie(parts, edit.wire)) };
    case 'change wire':
      return {
        ...build,
        wires: wires.map((each, index) => (index === edit.at % wires.length ? tie(parts, edit.wire) : each)),
      };
    case 'drop wire':
      return { ...build, wires: wires.filter((_, index) => index !== edit.at % wires.length) };
    case 'wire to front': {
      const moved = wires[edit.at % wires.length];
      return moved ? { ...build, wires: [moved, ...wires.filter((each) => each !== moved)] } : build;
    }
    case 'move end': {
      const { ends = [], ...rest } = wires[edit.at % wires.length] ?? { colours: [], lengths: [] };
      const moved = tie(parts, { ...rest, ends: ends.with(edit.at % ends.length, 'x') });
      const [tied = ''] = tie(parts, { ...rest, ends: [edit.end] }).ends;
      const whole = { ...moved, ends: moved.ends.map((each) => (each === 'x' ? tied : each)) };
      return {
        ...build,
        wires: wires.map((each, index) => (index === edit.at % wires.length ? whole : each)),
      };
    }
  }
}

/** The manifest's text. */
export function writeManifest({ revision, parts, wires }: RandomBuild): string {
  return JSON.stringify({
    format: 1,
    title: 'by chance',
    revision,
    board: 'nano-v3',
    parts,
    wires: wires.map(({ ends, colours, lengths, note }) => ({
      ...(ends.length === 2
        ? { from: ends[0], to: ends[1], colour: colours[0], length: lengths[0] }
        : { path: ends, colours, lengths }),
      ...(note !== undefined && { note }),
    })),
  });
}
