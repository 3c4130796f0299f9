/** What every switch that a hand works must do: the voltages it changes, and what the chip or the sketch makes of it. */

import type { Placed, SolvedRegion, SolvedState } from '../analysis';
import { leverOf } from '../base/primitive';
import { formatQuantity } from '../base/quantity';
import { voltWords } from './figure-words';
import type { PaperInput } from './paper';
import { groundName } from './power-on-tests';
import { probeName } from './probe-points';
import { lineOf } from './sketch-lines';
import { listWords } from './words';

export interface SwitchRow {
  readonly about: readonly string[];
  readonly part: string;
  /** "hold it pressed", "switch it over". */
  readonly act: string;
  readonly expect: string;
}

/** A change that a meter shows for certain, volts. */
const change = 0.2;

export function switchRows(input: PaperInput): readonly SwitchRow[] {
  const seen = new Set<string>();
  return input.workings.placed.flatMap((placed): SwitchRow[] => {
    const { primitive, part, onBoard } = placed;
    if (onBoard || primitive.type !== 'switch' || primitive.operatedBy !== undefined) return [];
    const lever = `${part}/${leverOf(primitive)}`;
    if (seen.has(lever)) return [];
    seen.add(lever);
    const act = primitive.action === 'momentary' ? 'hold it pressed' : 'switch it over';
    const region = input.workings.regions.find(({ elements }) => elements.some(({ id }) => id === placed.id));
    const expect = region ? effectOf(input, region, placed) : 'nothing: it is not wired';
    return [{ about: [part], part, act, expect }];
  });
}

function effectOf(input: PaperInput, region: SolvedRegion, placed: Placed): string {
  const pair = mostTelling(region, placed.id, placed);
  if (!pair) return 'no figure changes in a state that was solved';
  const { before, after, nets } = pair;
  const ground = groundName(input);
  const told = nets.slice(0, 3).map((net) => {
    const name = probeName(input.build, net);
    return `${name} against ${ground} goes from ${seen(before, net)} to ${seen(after, net)}`;
  });
  const lamps = currentChange(region, before, after);
  return [...told, ...lamps, ...meaningOf(input, region, nets, after)].join('; ');
}

interface Pair {
  readonly before: SolvedState;
  readonly after: SolvedState;
  readonly nets: readonly string[];
  readonly size: number;
}

/** The two states, alike but for this switch, between which the voltages differ most. */
function mostTelling(region: SolvedRegion, id: string, { primitive }: Placed): Pair | undefined {
  const rest = primitive.type === 'switch' ? primitive.rest : 'open';
  const others = (state: SolvedState) =>
    JSON.stringify([
      state.drives,
      state.settings,
      Object.entries(state.switches).filter(([other]) => other !== id),
    ]);
  let best: Pair | undefined;
  for (const before of region.states.filter(({ switches }) => switches[id] === rest)) {
    const key = others(before);
    const after = region.states.find((state) => state.switches[id] !== rest && others(state) === key);
    if (!after) continue;
    const steps = region.nets
      .map((net) => ({
        net,
        size: Math.abs((after.point.nodes[net]?.typ ?? 0) - (before.point.nodes[net]?.typ ?? 0)),
      }))
      .filter(({ size }) => size >= change)
      .sort((a, b) => b.size - a.size);
    const size = steps[0]?.size ?? 0;
    if (!best || size > best.size) best = { before, after, nets: steps.map(({ net }) => net), size };
  }
  return best;
}

function seen({ point }: SolvedState, net: string): string {
  const range = point.nodes[net];
  return range ? voltWords(range) : 'an open reading';
}

function currentChange({ elements }: SolvedRegion, before: SolvedState, after: SolvedState): string[] {
  return elements.flatMap(({ id, part, primitive }) => {
    if (primitive.type !== 'diode' || !primitive.lamp) return [];
    const [was, is] = [before.point.amps[id]?.typ ?? 0, after.point.amps[id]?.typ ?? 0];
    if (Math.abs(is - was) < 5e-4) return [];
    return [is > was ? `${part} lights with ${formatQuantity(is, 'A')}` : `${part} goes dark`];
  });
}

/** What the voltage means to the chip. */
function meaningOf(
  { build, workings, sources }: PaperInput,
  region: SolvedRegion,
  nets: readonly string[],
  after: SolvedState,
): string[] {
  const { reset } = build.board;
  const resetNet = workings.pins.find(({ pin }) => pin === reset?.pin)?.net;
  if (reset && resetNet !== undefined && nets.includes(resetNet)) {
    const low = (after.point.nodes[resetNet]?.max ?? 0) < reset.assertVolts.min;
    const below = formatQuantity(reset.assertVolts.min, 'V');
    return low
      ? [`below ${below} the chip is held in reset; let go, the sketch starts from the beginning`]
      : [`that is not below ${below}, so the chip may not reset`];
  }
  const readers = workings.pins.filter(({ pin, net }) => region.pins.includes(pin) && nets.includes(net));
  return readers.flatMap(({ pin, uses }) => {
    const reads = uses.filter(
      ({ action }) => action === 'read' || action === 'interrupt' || action === 'analog-read',
    );
    if (reads.length === 0) return [`the sketch does not read ${pin}`];
    const places = [
      ...new Set(reads.map(({ callSpan, call }) => `${call}() in ${lineOf(sources, callSpan)}`)),
    ];
    return [`the sketch reads ${pin} with ${listWords(places.slice(0, 3))}`];
  });
}
