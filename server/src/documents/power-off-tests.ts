/** What is measured before any supply is switched on: conductors, shorts, resistances, contacts and junctions. */

import type { Placed } from '../analysis';
import type { Build, Part } from '../base/build';
import { formatQuantity } from '../base/quantity';
import type { Range } from '../base/range';
import { ohmWords } from './figure-words';
import type { PaperInput } from './paper';
import { neighbours, pointsOf } from './probe-points';
import { diodeVolts, ohmsBetween } from './resistance';
import { listWords } from './words';

/** One thing to measure. */
export interface TestRow {
  /** Ids of the parts and wires it is about, for whoever prints the tests of some only. */
  readonly about: readonly string[];
  readonly between: string;
  readonly expect: string;
}

/** Above this a hand-held meter shows an open circuit. */
const OPEN = '"open", above 1 Mohm';

function readingWords(ohms: Range | 'open'): string {
  if (ohms === 'open' || ohms.typ > 1e6) return OPEN;
  return ohms.max < 1 ? 'below 1 ohm' : ohmWords(ohms);
}

/** Every net is one conductor: the tester sounds from its first point to each other. */
export function continuityRows(build: Build): readonly TestRow[] {
  return build.nets.flatMap((net): TestRow[] => {
    const [first, ...others] = pointsOf(build, net);
    if (first === undefined || others.length === 0) return [];
    const parts = net.terminals.map(({ part }) => part);
    return [
      {
        about: [...new Set([...net.wires, ...parts])],
        between: first,
        expect: `sounds to ${listWords(others)}`,
      },
    ];
  });
}

/** Rails against ground, and positions side by side: what must not be joined, or only by what is wired there. */
export function shortRows(input: PaperInput): readonly TestRow[] {
  const { build, workings } = input;
  const placed = workings.placed;
  const pins = new Map(build.board.pins.map((pin) => [pin.id, pin]));
  const ground = build.nets.find((net) => net.pins.some((pin) => pins.get(pin)?.type === 'ground'));
  const fed = placed.filter(({ onBoard, primitive }) => !onBoard && primitive.type === 'source');
  const supplies = build.nets.filter((net) => net.pins.some((pin) => pins.get(pin)?.type === 'supply'));
  const rails = ground
    ? supplies
        .filter((net) => net !== ground)
        .map((net) => ({
          about: net.wires,
          between: `${net.id} and ${ground.id}`,
          expect: readingWords(ohmsBetween(placed, net.id, ground.id)),
        }))
    : [];
  const own = fed.map(({ part, primitive, nets: [plus, minus] }) => ({
    about: [part],
    between: `${part}.${primitive.ends[0]} and ${part}.${primitive.ends[1]}, ${part} taken out`,
    expect: readingWords(ohmsBetween(placed, plus, minus)),
  }));
  const sides = neighbours(build).map(({ a, b, words }) => ({
    about: build.nets.filter(({ id }) => id === a || id === b).flatMap(({ wires }) => wires),
    between: words,
    expect: readingWords(ohmsBetween(placed, a, b)),
  }));
  return [...rails, ...own, ...sides];
}

/** Every part between its own terminals, as it is built in. */
export function partRows(input: PaperInput): readonly TestRow[] {
  const { build, workings } = input;
  return build.parts.flatMap((part) =>
    workings.placed
      .filter((each) => !each.onBoard && each.part === part.id)
      .flatMap((each) => rowsOfPrimitive(input, part, each)),
  );
}

function rowsOfPrimitive({ workings: { placed } }: PaperInput, part: Part, each: Placed): TestRow[] {
  const { primitive, third } = each;
  const [a, b] = primitive.ends;
  // An inner node has no place for a tip.
  if ([a, b].some((end) => !part.terminals.some(({ id }) => id === end))) return [];
  const row = (between: string, expect: string): TestRow => ({ about: [part.id], between, expect });
  const ends = `${part.id}.${a} and ${part.id}.${b}`;
  const measured = (moved: ReadonlySet<string> = new Set()) =>
    readingWords(ohmsBetween(placed, each.nets[0], each.nets[1], moved));
  switch (primitive.type) {
    case 'resistor':
    case 'coil':
      return [row(ends, measured())];
    case 'potentiometer': {
      if (third === undefined) return [row(ends, measured())];
      const most = formatQuantity(primitive.ohms.typ, 'ohm');
      const turning = `goes from near 0 to about ${most} as it is turned, without jumps`;
      return [row(ends, measured()), row(`${part.id}.${a} and ${part.id}.${primitive.wiper}`, turning)];
    }
    case 'switch': {
      if (primitive.operatedBy !== undefined) return [row(`${ends}, at rest`, measured())];
      const worked = primitive.action === 'momentary' ? 'held pressed' : 'switched over';
      return [row(`${ends}, untouched`, measured()), row(`${ends}, ${worked}`, measured(new Set([each.id])))];
    }
    case 'diode': {
      const volts = diodeVolts(primitive.volts, primitive.atAmps);
      if (!volts) return [];
      const glow = primitive.lamp ? '; it glows faintly, if the meter gives enough' : '';
      const expect = `diode range: about ${formatQuantity(volts.typ, 'V')}${glow}; turned round "open"`;
      return [row(`${part.id}.${a} (red tip) and ${part.id}.${b} (black tip)`, expect)];
    }
    default:
      return [];
  }
}
