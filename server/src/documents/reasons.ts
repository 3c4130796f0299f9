/** Why a value is what it is, with the sum written out: what a reader checks before trusting the rest. */

import type { SolvedState } from '../analysis';
import type { Part } from '../base/build';
import { formatQuantity } from '../base/quantity';
import { worst } from '../base/range';
import { explainDivider, explainSeries, runTime, sizePowerRating } from '../circuit';
import { ampWords, voltWords } from './figure-words';
import type { PaperInput } from './paper';
import { resistorOf } from './part-words';
import { mostLoaded } from './stock-choice';
import { listWords } from './words';

/** Sentences on the figures of a part; none where it has no figure that follows from a sum. */
export function reasonsFor(input: PaperInput, part: Part): readonly string[] {
  const resistor = resistorOf(part);
  if (resistor) return resistorReasons(input, part, `${part.id}/${resistor.id}`, resistor.ohms.typ);
  return part.inside.flatMap((primitive) => {
    if (primitive.type !== 'source' || primitive.ampHours === undefined) return [];
    return batteryReasons(input, part, `${part.id}/${primitive.id}`, primitive.ampHours);
  });
}

function resistorReasons(input: PaperInput, part: Part, element: string, ohms: number): readonly string[] {
  const value = formatQuantity(ohms, 'ohm');
  const loaded = mostLoaded(input.workings, element);
  if (!loaded) return [];
  const { state, amps } = loaded;
  const when = state.words === '' ? '' : ` with ${state.words}`;
  const run = seriesRun(state, element);
  const lines: string[] = [];
  const sum = run && explainSeries(run.sum);
  if (run && sum) lines.push(`Why ${value} for ${part.id}: by hand${when}, ${sum}.`);
  else lines.push(`${part.id}, ${value}${when}.`);
  const limits = run ? limitWords(input, run.others) : '';
  lines.push(`Solved over all tolerances the current is ${ampWords(amps)} (least / usual / most)${limits}.`);
  const divided = dividerWords(state, element);
  if (divided) lines.push(divided);
  const power = sizePowerRating({ amps: worst(amps), ohms });
  const rating = resistorOf(part)?.maxWatts ?? input.build.stock.watts;
  if (power.ok)
    lines.push(`Heat at the most: ${power.sum.text}, of ${formatQuantity(rating, 'W')} that it stands.`);
  return lines;
}

interface SeriesFound {
  readonly sum: Parameters<typeof explainSeries>[0];
  /** Ids of the other elements that the same current passes. */
  readonly others: readonly string[];
}

/** The run that carries the very current of a resistor: one source, resistances, junctions, and nothing beside them. */
function seriesRun({ network, point }: SolvedState, element: string): SeriesFound | undefined {
  const amps = Math.abs(point.amps[element]?.typ ?? 0);
  const carries = (id: string) => Math.abs(Math.abs(point.amps[id]?.typ ?? 0) - amps) <= amps * 1e-3;
  // A base takes the current as a junction does; the collector's is another one.
  const same = network.elements.filter(({ id, type }) =>
    type === 'transistor' ? carries(`${id}:control`) : carries(id),
  );
  let supply: number | undefined;
  let forward = 0;
  let ohms = 0;
  let sourceOhms = 0;
  for (const each of same) {
    if (each.type === 'source') {
      if (supply !== undefined) return undefined;
      supply = each.volts.typ;
      sourceOhms += each.ohms.typ;
    } else if (each.type === 'diode' || each.type === 'transistor') forward += each.volts.typ;
    else if (each.type === 'resistor' && each.id.startsWith('pin:')) sourceOhms += each.ohms.typ;
    else if (each.type === 'resistor' || each.type === 'coil') ohms += each.ohms.typ;
    else return undefined;
  }
  if (supply === undefined) return undefined;
  // A rail's hundredth of an ohm only blurs the sum.
  const sum = {
    supply,
    forward,
    ohms: rounded(ohms),
    sourceOhms: sourceOhms < 0.1 ? 0 : rounded(sourceOhms),
  };
  return { sum, others: same.map(({ id }) => id).filter((id) => id !== element) };
}

/** Contacts of a tenth of an ohm are left out beside hundreds. */
function rounded(ohms: number): number {
  return ohms > 20 ? Math.round(ohms) : ohms;
}

/** "; D7 may carry 20 mA, beacon 20 mA". */
function limitWords(input: PaperInput, others: readonly string[]): string {
  const pins = input.workings.pins
    .filter(({ pin }) => others.includes(`pin:${pin}`))
    .map(({ pin, limit }) => `${pin} may carry ${formatQuantity(limit.amps, 'A')}`);
  const lamps = input.workings.placed.flatMap(({ id, part, primitive }) =>
    primitive.type === 'diode' && primitive.maxAmps !== undefined && others.includes(id)
      ? [`${part} ${formatQuantity(primitive.maxAmps, 'A')}`]
      : [],
  );
  return pins.length + lamps.length === 0 ? '' : `; ${listWords([...pins, ...lamps])}`;
}

/** A resistor from a fixed voltage to a net that another one takes to ground makes a divider. */
function dividerWords({ network, point }: SolvedState, element: string): string | undefined {
  const resistors = network.elements.filter((each) => each.type === 'resistor' && !each.id.includes(':'));
  const own = resistors.find(({ id }) => id === element);
  const supply = network.elements.find((each) => each.type === 'source' && each.id.startsWith('rail:'));
  if (own?.type !== 'resistor' || supply?.type !== 'source') return undefined;
  const middle = own.a === supply.plus ? own.b : own.b === supply.plus ? own.a : undefined;
  if (middle === undefined || middle === network.ground) return undefined;
  const lower = resistors.find(
    (each) =>
      each.type === 'resistor' &&
      each !== own &&
      [each.a, each.b].includes(middle) &&
      [each.a, each.b].includes(network.ground),
  );
  const volts = point.nodes[middle];
  // A closed contact divides nothing that anybody would call a divider.
  if (lower?.type !== 'resistor' || lower.ohms.typ < 1 || !volts) return undefined;
  const sum = explainDivider(supply.volts.typ, own.ohms.typ, lower.ohms.typ);
  return `It divides: ${sum.text}; solved ${voltWords(volts)}.`;
}

function batteryReasons(input: PaperInput, part: Part, element: string, ampHours: number): readonly string[] {
  const loaded = mostLoaded(input.workings, element);
  if (!loaded) return [];
  const amps = Math.abs(loaded.amps.typ);
  const time = runTime({ ampHours, phases: [{ amps, seconds: 1 }] });
  return time.ok
    ? [`How long ${part.id} lasts at the usual current, if it flowed all the time: ${time.sum.text}.`]
    : [];
}
