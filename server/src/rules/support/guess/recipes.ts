/**
 * How a part of a kind is put on its pins: the part, what it needs beside it, and the wires, as steps of a draft of the
 * manifest. Modules get their supply and ground; a lamp its resistor, sized from the board's limits and the stock; a
 * load that takes more than a pin gives its transistor, supply and diode.
 */
import { insertPart, insertWire, type PartKind } from '../../../hardware';
import type { PinView, Subject } from '../../subject';
import type { Step } from '../draft';
import { lampResistor } from '../lamp-fixes';
import { nextName, ohmsText, pullValue } from '../manifest-edits';
import { viewOf } from '../views';
import type { Evidence } from './evidence';
import { Rails } from './rails';
import type { Candidate } from './rank';

export interface Recipe {
  /** "a lamp on D7 with 330 ohm to GND@left.14". */
  readonly title: string;
  readonly steps: readonly Step[];
  /** Part ids with the kind each has, the guessed one first; the others are there for its sake. */
  readonly parts: readonly { readonly id: string; readonly kind: string }[];
  /** It takes its supply from the board, which may have another that does. */
  readonly fed: boolean;
}

/** The forward drop of a lamp whose colour nobody said: from the lowest red to the highest blue (from memory). */
const anyLamp = { volts: { min: 1.7, typ: 2.1, max: 3.6 }, atAmps: 0.02, maxAmps: 0.02 };

/** What can be asked of a recipe. */
export interface Wish {
  readonly name: string;
  /** Kinds of the library, to know a module's terminals. */
  readonly kinds: { get(kind: string): PartKind | undefined };
  /** Which of the supplies that fit: 0 is the first. */
  readonly supply?: number;
}

class Draft {
  readonly steps: Step[] = [];
  readonly parts: { readonly id: string; readonly kind: string }[] = [];
  readonly rails: Rails;
  fed = false;
  readonly #taken: Set<string>;

  constructor(
    readonly subject: Subject,
    supply: number,
  ) {
    this.rails = new Rails(subject, supply);
    this.#taken = new Set(subject.build.parts.map((part) => part.id));
  }

  /** Adds a part and gives its id. */
  part(id: string, entry: Readonly<Record<string, string | boolean>> & { readonly kind: string }): string {
    this.#taken.add(id);
    this.parts.push({ id, kind: entry.kind });
    this.steps.push((text, file) => insertPart(text, id, entry, file));
    return id;
  }

  wire(entry: Parameters<typeof insertWire>[1]) {
    this.steps.push((text, file) => insertWire(text, entry, file));
  }

  next(prefix: string): string {
    for (let count = 1; ; count += 1) {
      const id = nextName(this.subject, prefix);
      const number = Number(id.slice(prefix.length)) + count - 1;
      if (!this.#taken.has(`${prefix}${number}`)) return `${prefix}${number}`;
    }
  }

  done(title: string): Recipe {
    return { title, steps: this.steps, parts: this.parts, fed: this.fed };
  }
}

/** The recipe for a candidate; undefined where the board cannot feed it or the stock has no value for it. */
export function makeRecipe(
  subject: Subject,
  evidence: Evidence,
  candidate: Candidate,
  wish: Wish,
): Recipe | undefined {
  const draft = new Draft(subject, wish.supply ?? 0);
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
  draft: Draft,
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
function divider(draft: Draft, view: PinView, candidate: Candidate, name: string): Recipe | undefined {
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

function contact(draft: Draft, view: PinView, candidate: Candidate, name: string): Recipe | undefined {
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
function switched(draft: Draft, view: PinView, candidate: Candidate, name: string): Recipe | undefined {
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

/** Colours that a signal's wire gets in turn; red and black stay for the supply. */
const signalColours = ['yellow', 'green', 'blue', 'white', 'orange', 'violet', 'grey', 'brown'];

/** A module: its signals to the pins, plus to a supply, minus to ground, a bus's pull-up where it brings none. */
function moduleOn(
  draft: Draft,
  evidence: Evidence,
  candidate: Candidate,
  name: string,
  kind: PartKind,
): Recipe | undefined {
  const ids = [...new Set(kind.terminals.map((terminal) => terminal.id))];
  const signal = kind.terminals.find(
    (terminal) => !['+', '-', 'common'].includes(terminal.id) && terminal.optional !== true,
  );
  const ends = evidence.pins.map(({ pin, terminal }) => ({ pin, terminal: terminal ?? signal?.id ?? '' }));
  if (ends.some(({ terminal }) => !ids.includes(terminal))) return undefined;
  const id = draft.part(name, {
    kind: candidate.kind,
    ...moduleDefaults[candidate.kind],
    ...candidate.parameters,
  });
  const power = ownPower[candidate.kind];
  if (power !== undefined) {
    const supply = draft.part(draft.next('supply'), {
      kind: 'power-adapter',
      volts: power,
      maxCurrent: '5 A',
    });
    const ground = draft.rails.ground();
    const rail = draft.rails.logic();
    if (ground === undefined || rail === undefined) return undefined;
    draft.wire({ from: `${supply}.+`, to: `${id}.+`, colour: 'red' });
    draft.wire({ from: `${supply}.-`, to: `${id}.-`, colour: 'black' });
    draft.wire({ from: `${supply}.-`, to: ground, colour: 'black' });
    draft.wire({ from: rail, to: `${id}.logic`, colour: 'red' });
    moved(draft, id, candidate.kind, new Set(ends.map(({ terminal }) => terminal)));
  } else if (ids.includes('+')) {
    const rail = draft.rails.feed(kind);
    if (rail === undefined) return undefined;
    draft.fed = true;
    draft.wire({ from: rail, to: `${id}.+`, colour: 'red' });
    // A second supply, and inputs that stand at a level all the time.
    for (const terminal of tiedHigh[candidate.kind] ?? [])
      draft.wire({ from: `${id}.+`, to: `${id}.${terminal}`, colour: 'red' });
  }
  ends.forEach(({ pin, terminal }, index) => {
    draft.wire({
      from: pin,
      to: `${id}.${terminal}`,
      colour: signalColours[index % signalColours.length] ?? 'white',
    });
  });
  const low = ids.includes('-') ? '-' : ids.includes('common') ? 'common' : undefined;
  if (low !== undefined && power === undefined) {
    const ground = draft.rails.ground();
    if (ground === undefined) return undefined;
    draft.wire({ from: `${id}.${low}`, to: ground, colour: 'black' });
    const tied = (tiedLow[candidate.kind] ?? []).filter(
      (terminal) => !ends.some((end) => end.terminal === terminal),
    );
    for (const terminal of tied) draft.wire({ from: `${id}.-`, to: `${id}.${terminal}`, colour: 'black' });
  }
  return draft.done(`a ${kind.title} on ${ends.map(({ pin }) => pin).join(', ')}`);
}

/** Modules that motors hang on are fed from a supply of their own, volts. */
const ownPower: Readonly<Record<string, string>> = { 'stepper-driver': '12 V', 'h-bridge': '9 V' };

/** The motors behind a driver. */
function moved(draft: Draft, id: string, kind: string, used: ReadonlySet<string>) {
  if (kind === 'stepper-driver') {
    const motor = draft.part(draft.next('motor'), { kind: 'stepper-motor', type: 'bipolar' });
    for (const end of ['a1', 'a2', 'b1', 'b2']) draft.wire({ from: `${id}.${end}`, to: `${motor}.${end}` });
    return;
  }
  for (const [first, second] of used.has('in-3') ? ['12', '34'] : ['12']) {
    const motor = draft.part(draft.next('motor'), { kind: 'dc-motor' });
    draft.wire({ from: `${id}.out-${first}`, to: `${motor}.1` });
    draft.wire({ from: `${id}.out-${second}`, to: `${motor}.2` });
  }
}

const moduleDefaults: Readonly<Record<string, Readonly<Record<string, string | boolean>>>> = {
  'one-wire-sensor': { pullUp: true },
  'open-collector-sensor': { pullUp: true },
  'addressable-strip': { count: '8' },
};
const tiedHigh: Readonly<Record<string, readonly string[]>> = {
  'shift-register': ['clear'],
  'stepper-driver': [],
};
const tiedLow: Readonly<Record<string, readonly string[]>> = {
  'shift-register': ['output-enable'],
  'character-lcd': ['contrast', 'read-write'],
};
