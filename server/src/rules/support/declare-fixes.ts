/** Ways to declare what hangs on a pin that the sketch uses: the likeliest part first, then bare wires. */
import type { Fix } from '../../base/finding';
import { insertPart, insertWire } from '../../hardware';
import type { PinView, Subject } from '../subject';
import { draftManifest, type Step } from './draft';
import { lampResistor } from './lamp-fixes';
import { groundEnd, nextName, ohmsText, pullValue, railEnd } from './manifest-edits';
import { viewOf } from './views';

/** What the sketch says of the pin. */
export interface Undeclared {
  readonly pin: string;
  readonly actions: readonly string[];
  /** The pin as the sketch writes it: a constant's name or a number. */
  readonly name: string;
}

/** Alternatives, the likeliest first. */
export function declarePart(subject: Subject, detail: Undeclared): readonly Fix[] {
  const view = viewOf(subject, detail.pin);
  if (!view) return [];
  const fixes: (Fix | undefined)[] = [];
  // What a library's object wants on its pin is in no list of ours: only wires to declared parts are offered.
  if (detail.actions.includes('device')) return bareWires(subject, detail);
  if (detail.actions.includes('analog-read')) fixes.push(potentiometer(subject, view, detail));
  else if (detail.actions.includes('servo')) fixes.push(servo(subject, view, detail));
  else if (detail.actions.includes('tone')) fixes.push(sounder(subject, view, detail));
  else if (drivesOut(view)) fixes.push(lamp(subject, view, detail));
  else fixes.push(button(subject, view, detail));
  fixes.push(...bareWires(subject, detail));
  return fixes.filter((fix): fix is Fix => fix !== undefined);
}

function drivesOut(view: PinView): boolean {
  return (
    view.drives.includes('high') ||
    view.drives.includes('low') ||
    view.uses.some((use) => use.action === 'write')
  );
}

/** The forward drop of a lamp whose colour nobody said: from the lowest red to the highest blue (from memory). */
const anyLamp = { volts: { min: 1.7, typ: 2.1, max: 3.6 }, atAmps: 0.02, maxAmps: 0.02 };

function lamp(subject: Subject, view: PinView, detail: Undeclared): Fix | undefined {
  const ground = groundEnd(subject);
  const ohms = lampResistor(subject, anyLamp, view.pin.id);
  if (ground === undefined || ohms === undefined) return undefined;
  const id = partName(subject, detail.name, 'lamp');
  const resistor = nextName(subject, 'R');
  return {
    title: `Declare a lamp on ${view.pin.id} with ${ohmsText(ohms)} ohm to ${ground}`,
    trust: 'ask',
    edits: draftManifest(subject, [
      addPart(id, { kind: 'led' }),
      addPart(resistor, { kind: 'resistor', value: ohmsText(ohms) }),
      addWire({ path: [view.pin.id, resistor, id, ground], colours: ['red', 'red', 'black'] }),
    ]),
  };
}

function button(subject: Subject, view: PinView, detail: Undeclared): Fix | undefined {
  const ground = groundEnd(subject);
  if (ground === undefined) return undefined;
  const id = partName(subject, detail.name, 'button');
  const steps = [
    addPart(id, { kind: 'push-button' }),
    addWire({ path: [view.pin.id, id, ground], colours: ['white', 'black'] }),
  ];
  let pulled = '';
  if (!view.drives.includes('pull-up')) {
    const rail = railEnd(subject, subject.build.board.logicRail);
    const value = pullValue(subject);
    if (rail === undefined || value === undefined) return undefined;
    const resistor = nextName(subject, 'R');
    steps.push(
      addPart(resistor, { kind: 'resistor', value }),
      addWire({ path: [rail, resistor, `${id}.1`] }),
    );
    pulled = ` and a ${value} pull-up`;
  }
  return {
    title: `Declare a push-button from ${view.pin.id} to ${ground}${pulled}`,
    trust: 'ask',
    edits: draftManifest(subject, steps),
  };
}

function sounder(subject: Subject, view: PinView, detail: Undeclared): Fix | undefined {
  const ground = groundEnd(subject);
  if (ground === undefined) return undefined;
  const id = partName(subject, detail.name, 'sounder');
  return {
    title: `Declare a passive buzzer from ${view.pin.id} to ${ground}`,
    trust: 'ask',
    edits: draftManifest(subject, [
      addPart(id, { kind: 'buzzer', drive: 'passive' }),
      addWire({ from: view.pin.id, to: `${id}.+`, colour: 'orange' }),
      addWire({ from: `${id}.-`, to: ground, colour: 'black' }),
    ]),
  };
}

function servo(subject: Subject, view: PinView, detail: Undeclared): Fix | undefined {
  const ground = groundEnd(subject);
  const rail = railEnd(subject, subject.build.board.logicRail);
  if (ground === undefined || rail === undefined) return undefined;
  const id = partName(subject, detail.name, 'servo');
  return {
    title: `Declare a servo on ${view.pin.id}, fed from ${subject.build.board.logicRail}`,
    trust: 'ask',
    edits: draftManifest(subject, [
      addPart(id, { kind: 'servo' }),
      addWire({ from: view.pin.id, to: `${id}.signal`, colour: 'yellow' }),
      addWire({ from: rail, to: `${id}.+`, colour: 'red' }),
      addWire({ from: `${id}.-`, to: ground, colour: 'black' }),
    ]),
  };
}

function potentiometer(subject: Subject, view: PinView, detail: Undeclared): Fix | undefined {
  const ground = groundEnd(subject);
  const rail = railEnd(subject, subject.build.board.logicRail);
  if (ground === undefined || rail === undefined) return undefined;
  const id = partName(subject, detail.name, 'knob');
  return {
    title: `Declare a potentiometer on ${view.pin.id}`,
    trust: 'ask',
    edits: draftManifest(subject, [
      addPart(id, { kind: 'potentiometer', value: '10k' }),
      addWire({ from: rail, to: `${id}.1`, colour: 'red' }),
      addWire({ from: view.pin.id, to: `${id}.wiper`, colour: 'green' }),
      addWire({ from: `${id}.2`, to: ground, colour: 'black' }),
    ]),
  };
}

/** A wire to a declared part's open terminal: parts named like the pin first, three at the most. */
function bareWires(subject: Subject, detail: Undeclared): readonly Fix[] {
  const wired = new Set<string>();
  for (const wire of subject.build.wires) {
    for (const end of wire.ends) if (end.kind === 'terminal') wired.add(`${end.part}.${end.terminal}`);
  }
  const wish = plainName(detail.name).toLowerCase();
  const open = subject.build.parts.flatMap((part) =>
    part.terminals
      .filter((terminal) => !wired.has(`${part.id}.${terminal.id}`))
      .slice(0, 1)
      .map((terminal) => ({ part: part.id, terminal: terminal.id })),
  );
  const likely = (part: string) => (wish !== '' && part.toLowerCase() === wish ? 0 : 1);
  return open
    .sort((a, b) => likely(a.part) - likely(b.part))
    .slice(0, 3)
    .map(({ part, terminal }) => ({
      title: `Declare a wire from ${detail.pin} to ${part}.${terminal}`,
      trust: 'ask' as const,
      edits: draftManifest(subject, [addWire({ from: detail.pin, to: `${part}.${terminal}` })]),
    }));
}

function addPart(id: string, entry: Readonly<Record<string, string>>): Step {
  return (text, file) => insertPart(text, id, entry, file);
}

function addWire(entry: Parameters<typeof insertWire>[1]): Step {
  return (text, file) => insertWire(text, entry, file);
}

/** A part's name from a constant's: `ledPin` → `led`, `CALL_PIN` → `call`, a bare number → the fallback. */
function partName(subject: Subject, name: string, fallback: string): string {
  const wish = plainName(name) || fallback;
  const taken = new Set(subject.build.parts.map((part) => part.id.toLowerCase()));
  for (const { id, names } of subject.build.board.pins)
    for (const word of [id, ...names]) taken.add(word.toLowerCase());
  return taken.has(wish.toLowerCase()) ? nextName(subject, wish) : wish;
}

function plainName(name: string): string {
  if (!/^[A-Za-z_]\w*$/.test(name)) return '';
  const bare = name.replace(/_?pin$/i, '').replace(/^pin_?/i, '') || name;
  // A macro's capitals are a habit of macros, not of parts.
  const words = /[a-z]/.test(bare)
    ? [bare]
    : bare
        .toLowerCase()
        .split('_')
        .filter((word) => word !== '');
  return words
    .map((word, index) => (index === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1)))
    .join('');
}
