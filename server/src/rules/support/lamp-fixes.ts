/** Repairs around lamps: a resistor put in, a resistor changed, a lamp turned round. */
import type { Wire } from '../../base/build';
import type { Fix } from '../../base/finding';
import { formatQuantity } from '../../base/quantity';
import { exactly, type Range } from '../../base/range';
import { sizeSeriesResistor } from '../../circuit';
import { insertIntoPath, insertPart, insertWire, replaceValue } from '../../hardware';
import type { Subject } from '../subject';
import { draftManifest, type Step } from './draft';
import { isPath, nextName, ohmsText, setEnd } from './manifest-edits';
import { partOf, regionOf, viewOf } from './views';

/** What an indicator lamp is usually given, amperes (common practice). */
const usualAmps = 0.01;

/** The junction a resistor is sized for. */
interface Junction {
  readonly volts: Range;
  readonly atAmps?: number;
  readonly maxAmps?: number;
}

/** The stock's resistor for a lamp on a pin, near the usual current and safe at the worst corner. Ohms. */
export function lampResistor(
  subject: Subject,
  junction: Junction,
  limit = subject.build.policy.pinAmps,
): number | undefined {
  const { board, stock } = subject.build;
  const supply = viewOf(subject, board.logicRail)?.pin.volts;
  if (!supply) return undefined;
  const sized = sizeSeriesResistor({
    supply,
    forward: junction.volts,
    ...(junction.atAmps !== undefined && { atAmps: junction.atAmps }),
    sourceOhms: board.limits.outputHighOhms,
    wantedAmps: usualAmps,
    limitAmps: Math.min(limit, junction.maxAmps ?? Number.POSITIVE_INFINITY),
    stock: stock.resistors,
    tolerance: stock.tolerance,
    watts: stock.watts,
  });
  return sized.ok ? sized.ohms : undefined;
}

/** Puts the computed stock value into the wire between a lamp and what drives it. */
export function insertResistor(
  subject: Subject,
  lamp: string,
  element: string,
  pin?: string,
): readonly Fix[] {
  const placed = subject.placed.find((candidate) => candidate.id === element);
  if (placed?.primitive.type !== 'diode') return [];
  const ohms = lampResistor(subject, placed.primitive);
  const [anode, cathode] = placed.primitive.ends;
  const touching = subject.build.wires.filter((wire) =>
    wire.ends.some(
      (end) =>
        end.kind === 'terminal' && end.part === lamp && (end.terminal === anode || end.terminal === cathode),
    ),
  );
  const toPin = (wire: Wire) => wire.ends.some((end) => end.kind === 'pin' && end.pin === pin);
  const wire = touching.find(toPin) ?? touching[0];
  if (ohms === undefined || !wire) return [];
  const id = nextName(subject, 'R');
  return [
    {
      title: `Put a ${formatQuantity(ohms, 'ohm')} resistor from stock into the wire of ${lamp}`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => insertPart(text, id, { kind: 'resistor', value: ohmsText(ohms) }, file),
        ...splice(wire, id),
      ]),
    },
  ];
}

/** Steps that put a two-terminal part into a wire. */
function splice(wire: Wire, id: string): readonly Step[] {
  if (isPath(wire)) return [(text, file) => insertIntoPath(text, wire.entry, wire.piece + 1, id, file)];
  const far = wire.ends[1];
  const rest =
    far.kind === 'terminal'
      ? `${far.part}.${far.terminal}`
      : far.position?.declared
        ? `${far.pin}@${far.position.header}.${far.position.index}`
        : far.pin;
  const colour = wire.colour === undefined ? {} : { colour: wire.colour };
  return [
    setEnd(wire, 1, `${id}.1`),
    (text, file) => insertWire(text, { from: `${id}.2`, to: rest, ...colour }, file),
  ];
}

/** Changes the one resistor on a pin to the next stock value that keeps the pin under a limit, amperes. */
export function raiseResistor(subject: Subject, pin: string, limit: number): readonly Fix[] {
  const region = regionOf(subject, pin);
  if (!region) return [];
  const own = region.elements.filter((element) => !element.onBoard);
  const resistors = own.filter((element) => element.primitive.type === 'resistor');
  const diodes = own.flatMap((element) => (element.primitive.type === 'diode' ? [element.primitive] : []));
  const [only] = resistors;
  // With more than a resistor and a lamp in a row the sum by the series formula would not be the answer.
  if (resistors.length !== 1 || diodes.length > 1 || !only || own.length > resistors.length + diodes.length)
    return [];
  const part = partOf(subject, only.part);
  const ohms = smallestSafe(subject, diodes[0] ?? { volts: exactly(0) }, limit);
  if (!part?.valueSpans.value || ohms === undefined) return [];
  return [
    {
      title: `Change ${part.id} to ${formatQuantity(ohms, 'ohm')} from stock`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => replaceValue(text, ['parts', part.id, 'value'], ohmsText(ohms), file),
      ]),
    },
  ];
}

function smallestSafe(subject: Subject, junction: Junction, limit: number): number | undefined {
  const { board, stock } = subject.build;
  const supply = viewOf(subject, board.logicRail)?.pin.volts;
  if (!supply) return undefined;
  const sized = sizeSeriesResistor({
    supply,
    forward: junction.volts,
    ...(junction.atAmps !== undefined && { atAmps: junction.atAmps }),
    sourceOhms: board.limits.outputHighOhms,
    limitAmps: Math.min(limit, junction.maxAmps ?? Number.POSITIVE_INFINITY),
    stock: stock.resistors,
    tolerance: stock.tolerance,
  });
  return sized.ok ? sized.ohms : undefined;
}

/** Turns a lamp round: the run it sits in is written the other way, or the two terminals are exchanged. */
export function swapLamp(subject: Subject, lamp: string, element: string): readonly Fix[] {
  const placed = subject.placed.find((candidate) => candidate.id === element);
  if (!placed) return [];
  const [anode, cathode] = placed.primitive.ends;
  const steps: Step[] = [];
  const passing = new Set<number>();
  for (const wire of subject.build.wires) {
    wire.ends.forEach((end, index) => {
      if (end.kind !== 'terminal' || end.part !== lamp) return;
      if (end.terminal !== anode && end.terminal !== cathode) return;
      if (isInside(subject, wire, index === 0 ? 0 : 1)) passing.add(wire.entry);
      else
        steps.push(setEnd(wire, index === 0 ? 0 : 1, `${lamp}.${end.terminal === anode ? cathode : anode}`));
    });
  }
  for (const entry of passing) {
    const turned = turnPath(subject, entry, lamp);
    if (!turned) return [];
    steps.push(...turned);
  }
  if (steps.length === 0) return [];
  return [{ title: `Turn ${lamp} round`, trust: 'ask', edits: draftManifest(subject, steps) }];
}

/** True where an end is a part that a path passes, not one written as `part.terminal`. */
function isInside(subject: Subject, wire: Wire, end: 0 | 1): boolean {
  if (!isPath(wire)) return false;
  const last = subject.build.wires.filter((other) => other.entry === wire.entry).length - 1;
  return end === 0 ? wire.piece > 0 : wire.piece < last;
}

/** Writes a path and its colours from the other end. Undefined where another part in it would be turned too. */
function turnPath(subject: Subject, entry: number, lamp: string): readonly Step[] | undefined {
  const pieces = subject.build.wires.filter((wire) => wire.entry === entry).sort((a, b) => a.piece - b.piece);
  const text = subject.texts[subject.build.file] ?? '';
  const [first] = pieces;
  if (!first) return undefined;
  const items = [first.ends[0], ...pieces.map((wire) => wire.ends[1])].map((end) => {
    const shown = text.slice(end.span.start, end.span.end);
    return shown.replace(/^"|"$/g, '');
  });
  const polarised = items.slice(1, -1).some((item) => {
    const part = partOf(subject, item);
    return item !== lamp && part?.terminals.some((terminal) => terminal.polarity !== undefined);
  });
  if (polarised) return undefined;
  const steps: Step[] = items.map(
    (_, index) => (now, file) =>
      replaceValue(now, ['wires', entry, 'path', index], items[items.length - 1 - index] ?? '', file),
  );
  const colours = pieces.map((wire) => wire.colour);
  if (colours.every((colour): colour is string => colour !== undefined)) {
    const list = /"colours"\s*:\s*\[/.test(text.slice(first.span.start, first.span.end));
    if (list) {
      colours.forEach((_, index) => {
        const turned = colours[colours.length - 1 - index] ?? '';
        steps.push((now, file) => replaceValue(now, ['wires', entry, 'colours', index], turned, file));
      });
    }
  }
  return steps;
}
