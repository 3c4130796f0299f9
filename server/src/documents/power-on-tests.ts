/** Voltages and currents in every state that the sketch and the hands can reach, as the circuit engine solved them. */

import type { SolvedRegion, SolvedState } from '../analysis';
import { ampWords, magnitude, voltWords } from './figure-words';
import type { PaperInput } from './paper';
import { probeName } from './probe-points';

/** One row of figures. */
export interface FigureRow {
  readonly about: readonly string[];
  /** "D7 high, restart open". */
  readonly state: string;
  readonly measure: string;
  readonly expect: string;
}

export interface RegionFigures {
  /** "D7, beacon and R1". */
  readonly title: string;
  readonly rows: readonly FigureRow[];
  /** What a reader must know of these figures. */
  readonly notes: readonly string[];
}

/** States printed of one region; the rest is said to be left out. */
const mostStates = 12;
/** Below this nothing flows that anybody measures, amperes. */
const leastAmps = 1e-6;

/** Regions that something of the user's hangs on, in the order in which their parts are declared. */
export function listFigures(input: PaperInput): readonly RegionFigures[] {
  const order = new Map(input.build.parts.map(({ id }, index) => [id, index]));
  const rank = ({ elements }: SolvedRegion) =>
    Math.min(...elements.map(({ part }) => order.get(part) ?? 1e6), 1e6);
  return input.workings.regions
    .filter((region) => region.elements.some(({ onBoard }) => !onBoard))
    .map((region, index) => ({ region, index }))
    .sort((a, b) => rank(a.region) - rank(b.region) || a.index - b.index)
    .map(({ region }) => figuresOf(input, region))
    .filter(({ rows }) => rows.length > 0);
}

function figuresOf(input: PaperInput, region: SolvedRegion): RegionFigures {
  const parts = [...new Set(region.elements.filter(({ onBoard }) => !onBoard).map(({ part }) => part))];
  const shown = chooseStates(region.states);
  const about = [...parts, ...wiresOf(input, region)];
  const rows = shown.flatMap((state) => rowsOfState(input, region, state, about));
  return { title: [...region.pins, ...parts].join(', '), rows, notes: notesOf(input, region, shown) };
}

/** The first states that differ in their figures. */
function chooseStates(states: readonly SolvedState[]): readonly SolvedState[] {
  return states.slice(0, mostStates);
}

function wiresOf({ build }: PaperInput, region: SolvedRegion): readonly string[] {
  return build.nets.filter(({ id }) => region.nets.includes(id)).flatMap(({ wires }) => wires);
}

function rowsOfState(
  input: PaperInput,
  region: SolvedRegion,
  { words, point }: SolvedState,
  about: readonly string[],
): FigureRow[] {
  const state = words === '' ? 'always' : words;
  const ground = groundName(input);
  const wired = input.build.nets.filter(({ id, wires }) => region.nets.includes(id) && wires.length > 0);
  const volts = wired.map(({ id }): FigureRow => {
    const range = point.nodes[id];
    const expect = range ? voltWords(range) : 'nothing drives it: any reading';
    return { about, state, measure: `${probeName(input.build, id)} against ${ground}`, expect };
  });
  const amps = region.elements.flatMap(({ id, onBoard, part, primitive: { type } }): FigureRow[] => {
    const range = point.amps[id];
    if (onBoard || !range || !carriers.has(type)) return [];
    if (magnitude(range).max < leastAmps) return [];
    return [{ about, state, measure: `current through ${part}`, expect: ampWords(range) }];
  });
  // One current is enough where the same one flows through resistor and lamp.
  const different = amps.filter(
    (row, index) => amps.findIndex((other) => other.expect === row.expect) === index,
  );
  return [...volts, ...different];
}

const carriers: ReadonlySet<string> = new Set(['resistor', 'diode', 'coil', 'load', 'transistor']);

/** The ground that the black tip goes to. */
export function groundName({ build }: PaperInput): string {
  return build.board.pins.find(({ type }) => type === 'ground')?.id ?? 'ground';
}

const quick: ReadonlySet<string> = new Set(['pwm', 'tone', 'servo', 'bus', 'transfer', 'device']);

function notesOf(input: PaperInput, region: SolvedRegion, shown: readonly SolvedState[]): readonly string[] {
  const notes: string[] = [];
  const changing = input.workings.pins.filter(
    ({ pin, uses }) => region.pins.includes(pin) && uses.some(({ action }) => quick.has(action)),
  );
  for (const { pin } of changing) {
    notes.push(
      `${pin} changes faster than a meter follows while the sketch works it: the meter shows a mean in between.`,
    );
  }
  if (shown.length < region.states.length) {
    notes.push(`${region.states.length - shown.length} further states are left out here.`);
  }
  if (region.limit !== undefined) notes.push(region.limit);
  if (region.elements.some(({ primitive: { type } }) => type === 'load')) {
    notes.push('Loads count with their idle, usual and peak current.');
  }
  return notes;
}
