/** Repairs around lamps: a resistor put in, a resistor changed, a lamp turned round. */
import type { Wire } from '../../base/build';
import type { Fix } from '../../base/finding';
import { formatQuantity } from '../../base/quantity';
import { exactly, type Range } from '../../base/range';
import { sizeSeriesResistor } from '../../circuit';
import { insertIntoWire, insertPart, replaceValue, reversePath } from '../../hardware';
import type { Subject } from '../subject';
import { draftManifest, type Step } from './draft';
import { isInside, nextName, ohmsText, setEnd } from './manifest-edits';
import { limitsOf, strengthOf } from './pin-limits';
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
export function lampResistor(subject: Subject, junction: Junction, pin?: string): number | undefined {
  const { policy, stock } = subject.build;
  const view = pin === undefined ? undefined : viewOf(subject, pin);
  const limit = view ? limitsOf(subject.build, view).working.amps : policy.pinAmps;
  return sizeFor(subject, junction, limit, { wantedAmps: usualAmps, watts: stock.watts, pin });
}

/** The stock's smallest resistor, or the one a wish asks for, that keeps pin and lamp under their limits. Ohms. */
function sizeFor(
  subject: Subject,
  junction: Junction,
  limit: number,
  {
    pin,
    ...wish
  }: { readonly wantedAmps?: number; readonly watts?: number; readonly pin?: string | undefined } = {},
): number | undefined {
  const { board, stock } = subject.build;
  const supply = viewOf(subject, board.logicRail)?.pin.volts;
  if (!supply) return undefined;
  const view = pin === undefined ? undefined : viewOf(subject, pin);
  const strength = view && strengthOf(board, view);
  const sized = sizeSeriesResistor({
    ...wish,
    supply,
    forward: junction.volts,
    ...(junction.atAmps !== undefined && { atAmps: junction.atAmps }),
    sourceOhms: strength?.outputHighOhms ?? board.limits.outputHighOhms,
    limitAmps: Math.min(limit, junction.maxAmps ?? Number.POSITIVE_INFINITY),
    stock: stock.resistors,
    tolerance: stock.tolerance,
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
  const ohms = lampResistor(subject, placed.primitive, pin);
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
      title: `Put a ${formatQuantity(ohms, 'ohm')} resistor${stockWords(subject)} into the wire of ${lamp}`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => insertPart(text, id, { kind: 'resistor', value: ohmsText(ohms) }, file),
        (text, file) => insertIntoWire(text, wire.entry, wire.piece, id, ['1', '2'], file),
      ]),
    },
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
  const ohms = sizeFor(subject, diodes[0] ?? { volts: exactly(0) }, limit, { pin });
  const now = only.primitive.type === 'resistor' ? only.primitive.ohms.typ : 0;
  if (!part?.valueSpans.value || ohms === undefined || ohms <= now) return [];
  return [
    {
      title: `Change ${part.id} to ${formatQuantity(ohms, 'ohm')}${stockWords(subject)}`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => replaceValue(text, ['parts', part.id, 'value'], ohmsText(ohms), file),
      ]),
    },
  ];
}

/** Said only where the manifest says what is in stock. */
function stockWords(subject: Subject): string {
  return /"stock"\s*:/.test(subject.texts[subject.build.file] ?? '') ? ' from stock' : '';
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
    steps.push(turned);
  }
  if (steps.length === 0) return [];
  return [{ title: `Turn ${lamp} round`, trust: 'ask', edits: draftManifest(subject, steps) }];
}

/** Turns a whole path round. Undefined where another part in it would be turned too. */
function turnPath(subject: Subject, entry: number, lamp: string): Step | undefined {
  const passed = subject.build.wires
    .filter((wire) => wire.entry === entry)
    .flatMap((wire) =>
      wire.ends.flatMap((end) => (end.kind === 'terminal' && end.part !== lamp ? [end.part] : [])),
    );
  const polarised = passed.some((id) => {
    const terminals = partOf(subject, id)?.terminals ?? [];
    return terminals.some((terminal) => terminal.polarity !== undefined);
  });
  return polarised ? undefined : (text, file) => reversePath(text, entry, file);
}
