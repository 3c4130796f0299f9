/** What the declared sources feed into the board, and with how many volts the board wants to be fed there. */
import type { SupplyInput } from '../../base/build';
import type { Range } from '../../base/range';
import type { PinView, Subject } from '../subject';
import { groundNets, joinedNets, type PlacedOf, sourceSupplies } from './supplies';

export interface BoardFeed {
  readonly source: PlacedOf<'source'>;
  /** Volts it gives. */
  readonly volts: Range;
  readonly view: PinView;
  /** Absent where the pin is no input by its maker, but the board's own rail. */
  readonly input?: SupplyInput;
  /** Volts to feed the pin with. */
  readonly wanted: { readonly min: number; readonly max: number };
  /** Volts that must not be passed. */
  readonly most: number;
}

/** Sources joined to a supply pin of the board by metal, switches and fuses, where the source shares the board's ground. */
export function boardFeeds(subject: Subject): readonly BoardFeed[] {
  const grounds = groundNets(subject);
  const { supplyInputs = [] } = subject.build.board;
  return sourceSupplies(subject).flatMap(({ source, net, volts }) => {
    const nets = joinedNets(subject, net);
    if (![...joinedNets(subject, source.nets[1])].some((id) => grounds.has(id))) return [];
    return subject.pins.flatMap((view) => {
      const { pin } = view;
      if (pin.type !== 'supply' || view.wires.length === 0 || !nets.has(view.net.id)) return [];
      const input = supplyInputs.find((candidate) => candidate.pin === pin.id);
      const wanted = input?.volts ?? pin.volts;
      if (!wanted) return [];
      const most = input?.absoluteVolts?.max ?? wanted.max;
      return [{ source, volts, view, ...(input && { input }), wanted, most: Math.max(most, wanted.max) }];
    });
  });
}
