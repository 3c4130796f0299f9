/** Regulators, the board's own and those among the parts, with what goes in, what comes out and what is drawn. */
import type { Range } from '../../base/range';
import type { Subject } from '../subject';
import { boardFeeds } from './board-feeds';
import { drawnFrom, netOfTerminal } from './draws';
import { onlyFeeder, placedOf, railSupplies, sourceSupplies } from './supplies';

export interface Regulator {
  /** In words: "the regulator behind VIN" or the part's name. */
  readonly name: string;
  /** Part where a finding stands: the regulator, or what feeds the board. */
  readonly part: string;
  readonly input: Range;
  readonly output: Range;
  readonly outputName: string;
  /** Amperes drawn from it. */
  readonly amps: Range;
  /** True where it turns what it drops into heat; a switching one does not. */
  readonly linear: boolean;
  /** Watts it gets rid of. */
  readonly watts?: number;
  readonly dropout?: Range;
}

export function regulatorsOf(subject: Subject): readonly Regulator[] {
  return [...ofBoard(subject), ...ofParts(subject)];
}

function ofBoard(subject: Subject): readonly Regulator[] {
  return boardFeeds(subject).flatMap(({ source, volts, view, input }) => {
    const rail = railSupplies(subject).find(({ name }) => name === input?.feeds);
    if (!input?.heatWatts || !rail) return [];
    return [
      {
        name: `the regulator behind ${view.pin.id}`,
        part: source.part,
        input: volts,
        output: rail.volts,
        outputName: rail.name,
        amps: drawnFrom(subject, rail),
        linear: true,
        watts: input.heatWatts.max,
      },
    ];
  });
}

function ofParts(subject: Subject): readonly Regulator[] {
  return placedOf(subject, 'source').flatMap((source) => {
    const { from, efficiency, volts, dropout, maxWatts } = source.primitive;
    const net = from === undefined ? undefined : netOfTerminal(subject, source.part, from);
    const feeder = net === undefined ? undefined : onlyFeeder(subject, net);
    const own = sourceSupplies(subject).find((candidate) => candidate.source.id === source.id);
    if (!feeder || !own || feeder.source?.part === source.part) return [];
    return [
      {
        name: source.part,
        part: source.part,
        input: feeder.volts,
        output: volts,
        outputName: source.part,
        amps: drawnFrom(subject, own),
        linear: efficiency === undefined,
        ...(maxWatts !== undefined && { watts: maxWatts }),
        ...(dropout && { dropout }),
      },
    ];
  });
}
