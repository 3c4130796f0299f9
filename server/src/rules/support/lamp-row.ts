/** The one resistor in front of a lamp, whoever drives the row: changed until the lamp gets what it stands. */
import type { Fix } from '../../base/finding';
import { formatQuantity } from '../../base/quantity';
import { replaceValue } from '../../hardware';
import type { Placed, Subject } from '../subject';
import { draftManifest } from './draft';
import { lampResistor } from './lamp-fixes';
import { litLamps } from './lit-lamps';
import { ohmsText } from './manifest-edits';
import { isSignal, partOf } from './views';

/** A resistor of the same current as the lamp that has a value in the manifest; undefined where there are several. */
function resistorOf(subject: Subject, element: string): Placed | undefined {
  const lit = litLamps(subject).find(({ lamp }) => lamp.id === element);
  if (!lit) return undefined;
  const { region, state, amps, lamp } = lit;
  const nets = new Set(lamp.nets.filter((net) => subject.rails[net] === undefined));
  const same = region.elements.filter(({ id, onBoard, primitive, nets: ends }) => {
    const own = Math.abs(state.point.amps[id]?.typ ?? 0);
    const near = ends.some((net) => nets.has(net));
    return !onBoard && primitive.type === 'resistor' && near && Math.abs(own - amps.typ) < 0.01 * amps.typ;
  });
  return same.length === 1 ? same[0] : undefined;
}

/** Raises the resistor by what Ohm's law asks for, to the next value of the stock. */
export function raiseLampResistor(subject: Subject, element: string, stands: number): readonly Fix[] {
  const resistor = resistorOf(subject, element);
  const lit = litLamps(subject).find(({ lamp }) => lamp.id === element);
  const part = resistor && partOf(subject, resistor.part);
  if (!part?.valueSpans.value || !lit || resistor?.primitive.type !== 'resistor') return [];
  // The volts over the resistor stay or grow with a smaller current, so a little more is asked for than the ratio.
  const wanted =
    resistor.primitive.ohms.typ * (lit.amps.max / stands) * (1 + subject.build.stock.tolerance) * 1.05;
  const ohms = subject.build.stock.resistors.find((value) => value >= wanted);
  if (ohms === undefined) return [];
  return [
    {
      title: `Change ${part.id} to ${formatQuantity(ohms, 'ohm')}`,
      trust: 'ask',
      edits: draftManifest(subject, [
        (text, file) => replaceValue(text, ['parts', part.id, 'value'], ohmsText(ohms), file),
      ]),
    },
  ];
}

/** Changes the one resistor between a pin and a lamp to the stock's value for an indicator. */
export function lowerLampResistor(subject: Subject, element: string): readonly Fix[] {
  const placed = subject.placed.find(({ id }) => id === element);
  const region = subject.regions.find(({ elements }) => elements.some(({ id }) => id === element));
  if (!region || placed?.primitive.type !== 'diode') return [];
  const own = region.elements.filter(({ onBoard }) => !onBoard);
  const resistors = own.filter(({ primitive }) => primitive.type === 'resistor');
  const [only] = resistors;
  const pins = region.pins.filter((id) => subject.pins.some((view) => view.pin.id === id && isSignal(view)));
  // Only the plain row of a pin, a resistor and a lamp is sized by the series sum.
  if (!only || own.length !== 2 || resistors.length !== 1 || pins.length !== 1) return [];
  const part = partOf(subject, only.part);
  const ohms = lampResistor(subject, placed.primitive, pins[0]);
  const now = only.primitive.type === 'resistor' ? only.primitive.ohms.typ : 0;
  if (!part?.valueSpans.value || ohms === undefined || ohms >= now) return [];
  const fix: Fix = {
    title: `Change ${part.id} to ${formatQuantity(ohms, 'ohm')}`,
    trust: 'ask',
    edits: draftManifest(subject, [
      (text, file) => replaceValue(text, ['parts', part.id, 'value'], ohmsText(ohms), file),
    ]),
  };
  return [fix];
}
