/**
 * How a part of a kind is put on its pins: the part, what it needs beside it, and the wires, as steps of a draft of the
 * manifest. Modules get their supply and ground; a lamp its resistor, sized from the board's limits and the stock; a
 * load that takes more than a pin gives its transistor, supply and diode.
 */
import type { PartKind } from '../../../hardware';
import type { PinView, Subject } from '../../subject';
import { lampResistor } from '../lamp-fixes';
import { ohmsText, pullValue } from '../manifest-edits';
import { viewOf } from '../views';
import type { Evidence } from './evidence';
import { moduleOn } from './modules';
import type { Candidate } from './rank';
import { type Recipe, RecipeDraft } from './recipe-draft';

/** The forward drop of a lamp whose colour nobody said: from the lowest red to the highest blue (from memory). */
const anyLamp = { volts: { min: 1.7, typ: 2.1, max: 3.6 }, atAmps: 0.02, maxAmps: 0.02 };

export type { Recipe } from './recipe-draft';

/** What can be asked of a recipe. */
export interface Wish {
  readonly name: string;
  /** Kinds of the library, to know a module's terminals. */
  readonly kinds: { get(kind: string): PartKind | undefined };
  /** Which of the supplies that fit: 0 is the first. */
  readonly supply?: number;
}

/** The recipe for a candidate; undefined where the board cannot feed it or the stock has no value for it. */
export function makeRecipe(
  subject: Subject,
  evidence: Evidence,
  candidate: Candidate,
  wish: Wish,
): Recipe | undefined {
  const draft = new RecipeDraft(subject, wish.supply ?? 0);
  const [first] = evidence.pins;
  const view = first && viewOf(subject, first.pin);
  if (!first || !view) return undefined;
  const simple = simpleRecipes[candidate.kind];
  if (simple) return simple(draft, view, candidate, wish.name, evidence);
  if (contacts.has(candidate.kind)) return contact(draft, view, candidate, wish.name);
  const kind = wish.kinds.get(candidate.kind);
  return kind && moduleOn(draft, evidence, candidate, wish.name, kind);
}

type Simple = (
  draft: RecipeDraft,
  view: PinView,
  candidate: Candidate,
  name: string,
  evidence: Evidence,
) => Recipe | undefined;

const contacts: ReadonlySet<string> = new Set([
  'push-button',
  'toggle-switch',
  'reed-switch',
  'tilt-switch',
  'limit-switch',
]);

const simpleRecipes: Readonly<Record<string, Simple>> = {
  led(draft, view, candidate, name) {
    const ohms = lampResistor(draft.subject, anyLamp, view.pin.id);
    if (ohms === undefined) return undefined;
    const ground = draft.rails.ground();
    if (ground === undefined) return undefined;
    const lamp = draft.part(name, { kind: 'led', ...candidate.parameters });
    const resistor = draft.part(draft.next('R'), { kind: 'resistor', value: ohmsText(ohms) });
    draft.wire({ path: [view.pin.id, resistor, lamp, ground], colours: ['red', 'red', 'black'] });
    return draft.done(`a lamp on ${view.pin.id} with ${ohmsText(ohms)} ohm to ${ground}`);
  },
  'rgb-led'(draft, view, _candidate, name, evidence) {
    const ohms = lampResistor(draft.subject, anyLamp, view.pin.id);
    const ground = draft.rails.ground();
    if (ohms === undefined || ground === undefined) return undefined;
    const lamp = draft.part(name, { kind: 'rgb-led', common: 'cathode' });
    for (const { pin, terminal } of evidence.pins) {
      const resistor = draft.part(draft.next('R'), { kind: 'resistor', value: ohmsText(ohms) });
      draft.wire({
        path: [pin, resistor, `${lamp}.${terminal}`],
        colours: [terminal ?? 'red', terminal ?? 'red'],
      });
    }
    draft.wire({ from: `${lamp}.common`, to: ground, colour: 'black' });
    return draft.done(`a three-colour lamp on ${evidence.pins.map(({ pin }) => pin).join(', ')}`);
  },
  buzzer(draft, view, candidate, name) {
    const ground = draft.rails.ground();
    if (ground === undefined) return undefined;
    const drive = candidate.parameters.drive ?? 'passive';
    const id = draft.part(name, { kind: 'buzzer', drive });
    draft.wire({ from: view.pin.id, to: `${id}.+`, colour: 'orange' });
    draft.wire({ from: `${id}.-`, to: ground, colour: 'black' });
    const words = drive === 'passive' ? 'a passive buzzer' : 'an active buzzer';
    return draft.done(`${words} from ${view.pin.id} to ${ground}`);
  },
  speaker(draft, view, _candidate, name) {
    const ground = draft.rails.ground();
    const ohms = lampResistor(draft.subject, { volts: { min: 0, typ: 0, max: 0 } }, view.pin.id);
    if (ground === undefined || ohms === undefined) return undefined;
    const id = draft.part(name, { kind: 'speaker' });
    const resistor = draft.part(draft.next('R'), { kind: 'resistor', value: ohmsText(ohms) });
    draft.wire({ path: [view.pin.id, resistor, id, ground], colours: ['orange', 'orange', 'black'] });
    return draft.done(`a loudspeaker on ${view.pin.id} behind ${ohmsText(ohms)} ohm`);
  },
  potentiometer(draft, view, _candidate, name) {
    const ground = draft.rails.ground();
    const rail = draft.rails.logic();
    if (ground === undefined || rail === undefined) return undefined;
    const id = draft.part(name, { kind: 'potentiometer', value: '10k' });
    draft.wire({ from: rail, to: `${id}.1`, colour: 'red' });
    draft.wire({ from: view.pin.id, to: `${id}.wiper`, colour: 'green' });
    draft.wire({ from: `${id}.2`, to: ground, colour: 'black' });
    return draft.done(`a potentiometer on ${view.pin.id}`);
  },
  photoresistor: divider,
  thermistor: divider,
  'n-mosfet': switched,
};

/** A resistor that follows light or heat, from the rail to the pin, and a fixed one from the pin to ground. */
function divider(draft: RecipeDraft, view: PinView, candidate: Candidate, name: string): Recipe | undefined {
  const ground = draft.rails.ground();
  const rail = draft.rails.logic();
  const value = pullValue(draft.subject);
  if (ground === undefined || rail === undefined || value === undefined) return undefined;
  const id = draft.part(name, { kind: candidate.kind });
  const resistor = draft.part(draft.next('R'), { kind: 'resistor', value });
  draft.wire({ path: [rail, id, resistor, ground], colours: ['red', 'green', 'black'] });
  draft.wire({ from: view.pin.id, to: `${id}.2`, colour: 'green' });
  return draft.done(`a ${candidate.kind} on ${view.pin.id} with ${value} to ground`);
}

function contact(draft: RecipeDraft, view: PinView, candidate: Candidate, name: string): Recipe | undefined {
  const ground = draft.rails.ground();
  if (ground === undefined) return undefined;
  const limit = candidate.kind === 'limit-switch';
  const id = draft.part(name, { kind: candidate.kind, ...candidate.parameters });
  const [near, far] = limit ? [`${id}.no`, `${id}.common`] : [`${id}.1`, `${id}.2`];
  if (limit) {
    draft.wire({ from: view.pin.id, to: near, colour: 'white' });
    draft.wire({ from: far, to: ground, colour: 'black' });
  } else draft.wire({ path: [view.pin.id, id, ground], colours: ['white', 'black'] });
  const words = `a ${candidate.kind} from ${view.pin.id} to ${ground}`;
  if (view.drives.includes('pull-up')) return draft.done(words);
  const rail = draft.rails.logic();
  const value = pullValue(draft.subject);
  if (rail === undefined || value === undefined) return undefined;
  const resistor = draft.part(draft.next('R'), { kind: 'resistor', value });
  draft.wire({ path: [rail, resistor, near] });
  return draft.done(`${words} and a ${value} pull-up`);
}

/** A load behind a transistor, with a supply of its own and a diode across what has a winding. */
function switched(draft: RecipeDraft, view: PinView, candidate: Candidate, name: string): Recipe | undefined {
  const ground = draft.rails.ground();
  const gate = lampResistor(draft.subject, { volts: { min: 0, typ: 0, max: 0 } }, view.pin.id);
  const pull = pullValue(draft.subject);
  if (ground === undefined || gate === undefined || pull === undefined) return undefined;
  const kind = candidate.drives ?? 'dc-motor';
  const volts = kind === 'dc-motor' ? '6 V' : '12 V';
  const load = draft.part(name, kind === 'led-strip' ? { kind, metres: '1' } : { kind });
  const transistor = draft.part(draft.next('Q'), { kind: 'n-mosfet' });
  const series = draft.part(draft.next('R'), { kind: 'resistor', value: ohmsText(gate) });
  const down = draft.part(draft.next('R'), { kind: 'resistor', value: pull });
  const supply = draft.part(draft.next('supply'), { kind: 'power-adapter', volts, maxCurrent: '5 A' });
  const [plus, minus] = kind === 'led-strip' ? ['+', '-'] : ['1', '2'];
  draft.wire({ path: [view.pin.id, series, `${transistor}.gate`], colours: ['orange', 'orange'] });
  draft.wire({ path: [`${transistor}.gate`, down, `${transistor}.source`] });
  draft.wire({ from: `${supply}.+`, to: `${load}.${plus}`, colour: 'red' });
  draft.wire({ from: `${load}.${minus}`, to: `${transistor}.drain`, colour: 'blue' });
  draft.wire({ from: `${transistor}.source`, to: `${supply}.-`, colour: 'black' });
  draft.wire({ from: `${supply}.-`, to: ground, colour: 'black' });
  if (kind !== 'led-strip') {
    const diode = draft.part(draft.next('diode'), { kind: 'diode' }); // its cathode to plus
    draft.wire({ path: [`${load}.2`, diode, `${load}.1`] });
  }
  return draft.done(`a ${kind} on ${view.pin.id} behind a transistor`);
}
