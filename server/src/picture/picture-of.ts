/** From a snapshot of the analyser to what a picture shows. */
import type { Snapshot } from '../analysis';
import type { Build, End, Part, Primitive, Wire } from '../base/build';
import { formatQuantity } from '../base/quantity';
import { wirePaints } from '../documents/colours';
import { chosenWords, resistorOf } from '../documents/part-words';
import { endWords } from '../documents/words';
import { currentsOf } from './currents';
import { placeMarks } from './marks';
import type {
  PictureEnd,
  PictureHeader,
  PictureModel,
  PicturePart,
  PictureSymbol,
  PictureWire,
} from './model';

/** Stands for header positions that a wire asks for and the board has not. */
export const NO_HEADER = '';

/** @returns undefined where the snapshot has no build. Plain data; offsets are those of the analysed texts. */
export function pictureOf(snapshot: Snapshot): PictureModel | undefined {
  const { build } = snapshot;
  if (!build) return undefined;
  const marks = placeMarks(build, snapshot.facts, snapshot.findings);
  const currents = currentsOf(snapshot.workings());
  return {
    title: build.title,
    ...(build.revision !== undefined && { revision: build.revision }),
    board: build.board.title,
    headers: headersOf(build, marks.pins, currents.pins),
    parts: build.parts.map((part) =>
      partOf(part, marks.parts.get(part.id) ?? [], currents.parts.get(part.id)),
    ),
    wires: wiresOf(build, marks.wires),
    marks: marks.others,
  };
}

type Marks = ReadonlyMap<string, PicturePart['marks']>;

function headersOf(build: Build, marks: Marks, amps: ReadonlyMap<string, number>): PictureHeader[] {
  const { board } = build;
  const ends = build.wires.flatMap((wire) => wire.ends).filter((end) => end.kind === 'pin');
  const taken = new Set(
    ends.flatMap(({ position }) => (position ? [`${position.header}.${position.index}`] : [])),
  );
  const supplies = new Set(
    board.pins.filter(({ type }) => type === 'supply' || type === 'ground').map(({ id }) => id),
  );
  const wiredPins = new Set(ends.map(({ pin }) => pin));
  const told = new Set<string>();
  const hole = (pin: string, index: number, wired: boolean) => {
    // A pin on several positions is told of once, at a wired one where there is one.
    const tell = !told.has(pin) && (wired || !wiredPins.has(pin));
    if (tell) told.add(pin);
    const current = amps.get(pin);
    return {
      pin,
      index,
      supply: supplies.has(pin),
      wired,
      ...(tell && current !== undefined && { amps: current }),
      marks: tell ? (marks.get(pin) ?? []) : [],
    };
  };
  const rows = { left: 0, right: 0 };
  const headers = board.headers.map((header): PictureHeader => {
    const side = header.side ?? (rows.left <= rows.right ? 'left' : 'right');
    rows[side] += header.positions.length + 2;
    const { id, title, landmark, positions } = header;
    const holes = positions.map((pin, index) => hole(pin, index + 1, taken.has(`${id}.${index + 1}`)));
    return { id, title, landmark, side, holes };
  });
  const homeless = [...new Set(ends.flatMap(({ pin, position }) => (position ? [] : [pin])))];
  if (homeless.length === 0) return headers;
  const side = rows.left <= rows.right ? 'left' : 'right';
  const holes = homeless.map((pin) => hole(pin, 0, true));
  return [...headers, { id: NO_HEADER, title: 'no position left', landmark: '', side, holes }];
}

function partOf(part: Part, marks: PicturePart['marks'], amps: number | undefined): PicturePart {
  const resistor = resistorOf(part);
  const { id, title, purpose, terminals, joined, span } = part;
  return {
    id,
    title,
    value: resistor ? formatQuantity(resistor.ohms.typ, 'ohm') : valueWords(part),
    ...(purpose !== undefined && { purpose }),
    terminals: terminals.map((terminal) => ({
      id: terminal.id,
      ...(terminal.tell !== undefined && { tell: terminal.tell }),
    })),
    symbols: part.inside.map((primitive) => symbolOf(part, primitive)),
    joined: joined ?? [],
    ...(amps !== undefined && { amps }),
    span,
    marks,
  };
}

/** The figures that the user chose, without the names of the keys where one alone says enough. */
function valueWords(part: Part): string {
  const own = Object.keys(part.valueSpans).filter((key) => ['colour', 'value', 'volts'].includes(key));
  const [key] = own;
  if (own.length !== 1 || key === undefined) return chosenWords(part);
  const text = part.parameters[key] ?? '';
  return key === 'volts' && /^[\d.]+$/.test(text) ? `${text} V` : text;
}

/** Kinds whose symbol tells more than their primitive. */
const BY_KIND: Readonly<Record<string, PictureSymbol['type']>> = {
  'filament-lamp': 'lamp',
  'dc-motor': 'motor',
  buzzer: 'sounder',
  speaker: 'sounder',
};

function symbolOf(part: Part, primitive: Primitive): PictureSymbol {
  const { id, ends } = primitive;
  const type = (part.inside.length === 1 && BY_KIND[part.kind]) || typeOf(primitive);
  switch (primitive.type) {
    case 'capacitor':
      return { id, type, ends, polarised: primitive.polarised === true };
    case 'switch': {
      const { action, rest, operatedBy } = primitive;
      const moved = operatedBy === undefined ? {} : { operatedBy };
      return { id, type, ends, momentary: action === 'momentary', closed: rest === 'closed', ...moved };
    }
    case 'potentiometer':
      return { id, type, ends, third: primitive.wiper };
    case 'transistor': {
      const { control, channel, gain } = primitive;
      return { id, type, ends, third: control, channel, bipolar: gain !== undefined };
    }
    default:
      return { id, type, ends };
  }
}

function typeOf(primitive: Primitive): PictureSymbol['type'] {
  switch (primitive.type) {
    case 'resistor':
      return primitive.maxAmps === undefined ? 'resistor' : 'fuse';
    case 'diode':
      return primitive.lamp ? 'light' : primitive.breakdownVolts ? 'zener' : 'diode';
    case 'source':
      // What draws its power from another terminal is a circuit of its own.
      return primitive.from !== undefined ? 'logic' : primitive.ampHours === undefined ? 'source' : 'cells';
    case 'logic-input':
    case 'logic-output':
      return 'logic';
    default:
      return primitive.type;
  }
}

function wiresOf(build: Build, marks: Marks): PictureWire[] {
  const railPins = new Set(
    build.board.pins.filter(({ type }) => type === 'supply' || type === 'ground').map(({ id }) => id),
  );
  const netOf = new Map(build.nets.flatMap((net) => net.wires.map((id) => [id, net] as const)));
  return build.wires.map((wire) => {
    const net = netOf.get(wire.id);
    return {
      id: wire.id,
      ends: [endOf(wire.ends[0]), endOf(wire.ends[1])],
      ...(wire.colour !== undefined && { colour: wire.colour }),
      paints: wire.colour === undefined ? [] : wirePaints(wire.colour),
      net: net?.id ?? '',
      rail: net?.pins.some((pin) => railPins.has(pin)) ?? false,
      words: wireWords(wire),
      span: wire.span,
      marks: marks.get(wire.id) ?? [],
    };
  });
}

function endOf(end: End): PictureEnd {
  if (end.kind === 'terminal') return { kind: 'terminal', part: end.part, terminal: end.terminal };
  const { pin, position } = end;
  return { kind: 'hole', pin, header: position?.header ?? NO_HEADER, index: position?.index ?? 0 };
}

function wireWords(wire: Wire): string {
  const [a, b] = wire.ends;
  return `${wire.colour ?? 'wire'}: ${endWords(a)} — ${endWords(b)}`;
}
