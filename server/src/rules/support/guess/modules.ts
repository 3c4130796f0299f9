/** How a module is put on its pins: supply, ground, signals, and the motors behind a driver. */
import type { PartKind } from '../../../hardware';
import type { Evidence } from './evidence';
import type { Candidate } from './rank';
import type { Recipe, RecipeDraft } from './recipe-draft';

/** Colours that a signal's wire gets in turn; red and black stay for the supply. */
const signalColours = ['yellow', 'green', 'blue', 'white', 'orange', 'violet', 'grey', 'brown'];

/** A module: its signals to the pins, plus to a supply, minus to ground, a bus's pull-up where it brings none. */
export function moduleOn(
  draft: RecipeDraft,
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
function moved(draft: RecipeDraft, id: string, kind: string, used: ReadonlySet<string>) {
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
