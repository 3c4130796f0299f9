/**
 * The states a region can be in: every pin's drive, every switch, every knob. All combinations where they are few;
 * where they are many, each thing varied alone and the extremes, and it is said that the rest was not looked at.
 */
import { numbersOf } from '../base/build';
import type { PinMoment } from '../base/pin-use';
import { leverOf } from '../base/primitive';
import { wiperPlaces } from '../base/wiper-places';
import type { Drive, PinView, Region, StatePoint } from '../rules/subject';

/** States of one region that are looked at, at the most. */
const mostStates = 256;
/** States times elements: a region of many parts gets fewer states, so that no keystroke waits for it. */
const mostWork = 4096;

interface Choice {
  readonly kind: 'pin' | 'switch' | 'setting';
  readonly id: string;
  readonly values: readonly string[];
  /** Further contacts on the same lever. */
  readonly others?: { readonly id: string; readonly opposite: boolean }[];
}

/** What the pins, switches and knobs of a region do at one moment. */
export type RegionState = Pick<StatePoint, 'words' | 'drives' | 'switches' | 'settings'>;

const driveWords: Readonly<Record<Drive, string>> = {
  high: 'high',
  low: 'low',
  input: 'as input',
  'pull-up': 'with pull-up',
  'pull-down': 'with pull-down',
};

function choicesOf(region: Region, pinOf: (id: string) => PinView | undefined): Choice[] {
  const choices: Choice[] = [];
  const levers = new Map<string, Choice>();
  const coils = new Set(
    region.elements.flatMap(({ id, primitive }) => (primitive.type === 'coil' ? [id] : [])),
  );
  for (const id of region.pins) {
    const view = pinOf(id);
    if (view && view.pin.number !== undefined) choices.push({ kind: 'pin', id, values: view.drives });
  }
  for (const { primitive, id, third, part } of region.elements) {
    if (primitive.type === 'switch') {
      // The coil that moves it is in the same network: the solver finds out.
      if (coils.has(`${part}/${primitive.operatedBy}`)) continue;
      const values = primitive.rest === 'open' ? ['open', 'closed'] : ['closed', 'open'];
      const key = `${part}/${leverOf(primitive)}`;
      const lever = levers.get(key);
      if (lever) {
        lever.others?.push({ id, opposite: lever.values[0] !== primitive.rest });
        continue;
      }
      const choice: Choice = { kind: 'switch', id, values, others: [] };
      levers.set(key, choice);
      choices.push(choice);
    } else if (primitive.type === 'potentiometer') {
      choices.push({ kind: 'setting', id, values: Object.keys(wiperPlaces) });
    } else if (primitive.type === 'logic-output') {
      choices.push({ kind: 'setting', id, values: ['low', third === undefined ? 'released' : 'high'] });
    }
  }
  return choices;
}

/** The states to look at, and whether these are all. */
export function statesOf(
  region: Region,
  pinOf: (id: string) => PinView | undefined,
  moments: readonly PinMoment[] | undefined,
): { readonly states: readonly RegionState[]; readonly all: boolean } {
  const choices = choicesOf(region, pinOf);
  const most = Math.max(24, Math.min(mostStates, Math.floor(mostWork / Math.max(1, region.elements.length))));
  const met = moments && rowsOfMoments(choices, moments, pinOf, most);
  if (met) return { states: met.map((row) => stateOf(choices, row)), all: true };
  const total = choices.reduce((product, choice) => product * choice.values.length, 1);
  const all = total <= most;
  const rows = all ? everyRow(choices) : chosenRows(choices);
  return { states: rows.map((row) => stateOf(choices, row)), all };
}

/** The combinations of pins that the sketch was seen to have, with every position of the switches; undefined past `most`. */
function rowsOfMoments(
  choices: readonly Choice[],
  moments: readonly PinMoment[],
  pinOf: (id: string) => PinView | undefined,
  most: number,
): string[][] | undefined {
  const numbers = choices.map((choice) => {
    const view = choice.kind === 'pin' ? pinOf(choice.id) : undefined;
    return view ? numbersOf(view.pin) : [];
  });
  // Only the region's own pins tell moments apart here; most of the program's moments are one and the same to it.
  const projected = new Map<string, Choice[]>();
  for (const { pins } of moments) {
    const own = choices.map((choice, index) => {
      if (choice.kind !== 'pin') return choice;
      const number = numbers[index]?.find((candidate) => pins[candidate] !== undefined);
      return { ...choice, values: number === undefined ? ['input'] : (pins[number] ?? ['input']) };
    });
    projected.set(own.map((choice) => choice.values.join('/')).join(), own);
  }
  const rows = new Map<string, string[]>();
  for (const own of projected.values()) {
    if (own.reduce((product, choice) => product * choice.values.length, 1) > most) return undefined;
    for (const row of everyRow(own)) rows.set(row.join(), row);
    if (rows.size > most) return undefined;
  }
  return [...rows.values()];
}

function everyRow(choices: readonly Choice[]): string[][] {
  let rows: string[][] = [[]];
  for (const choice of choices) rows = rows.flatMap((row) => choice.values.map((value) => [...row, value]));
  return rows;
}

/** Each choice alone against the first values, and each pin against all others driven the other way. */
function chosenRows(choices: readonly Choice[]): string[][] {
  const rows = new Map<string, string[]>();
  const add = (row: string[]) => rows.set(row.join(), row);
  const rowOf = (pick: (choice: Choice, index: number) => string | undefined) =>
    choices.map((choice, index) => {
      const wish = pick(choice, index);
      return wish !== undefined && choice.values.includes(wish) ? wish : (choice.values[0] ?? '');
    });
  add(rowOf(() => undefined));
  choices.forEach((choice, at) => {
    for (const value of choice.values) add(rowOf((_, index) => (index === at ? value : undefined)));
  });
  for (const [own, others] of [
    ['high', 'low'],
    ['low', 'high'],
  ] as const) {
    for (const switches of ['open', 'closed'] as const) {
      add(rowOf((choice) => (choice.kind === 'switch' ? switches : own)));
      choices.forEach((choice, at) => {
        if (choice.kind !== 'pin') return;
        add(rowOf((other, index) => (other.kind === 'switch' ? switches : index === at ? own : others)));
      });
    }
  }
  return [...rows.values()];
}

function stateOf(choices: readonly Choice[], row: readonly string[]): RegionState {
  const drives: Record<string, Drive> = {};
  const switches: Record<string, 'open' | 'closed'> = {};
  const settings: Record<string, string> = {};
  const words: string[] = [];
  choices.forEach((choice, index) => {
    const value = row[index] ?? '';
    if (choice.kind === 'pin') {
      drives[choice.id] = value as Drive;
      words.push(`${choice.id} ${driveWords[value as Drive]}`);
      return;
    }
    if (choice.kind === 'switch') switches[choice.id] = value as 'open' | 'closed';
    else settings[choice.id] = value;
    for (const { id, opposite } of choice.others ?? []) {
      switches[id] = (value === 'closed') === opposite ? 'open' : 'closed';
    }
    // A lever with contacts of both kinds is neither open nor closed.
    const mixed = choice.others?.some(({ opposite }) => opposite);
    const lever = value === choice.values[0] ? 'at rest' : 'moved';
    words.push(`${choice.id.split('/')[0]} ${mixed ? lever : value}`);
  });
  return { words: words.join(', '), drives, switches, settings };
}
