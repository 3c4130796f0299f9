/** Which side of a supply a net is on: what metal, switches and fuses join it to. */
import type { Subject } from '../subject';
import { groundNets, joinedNets, placedOf } from './supplies';

export interface Pole {
  /** Joined to a supply pin of the board or to the plus of a source. */
  readonly up: boolean;
  /** Joined to a ground pin or to the minus of a source. */
  readonly down: boolean;
  /** Joined to a ground pin. */
  readonly ground: boolean;
  /** Supply pins joined to it. */
  readonly pins: readonly string[];
  readonly nets: ReadonlySet<string>;
}

/** @param except a part whose own sources do not count. */
export function poleOf(subject: Subject, net: string, except?: string): Pole {
  const nets = joinedNets(subject, net);
  const pins = subject.pins
    .filter((view) => view.pin.type === 'supply' && nets.has(view.net.id))
    .map((view) => view.pin.id);
  const sources = placedOf(subject, 'source').filter(({ part }) => part !== except);
  const ground = [...groundNets(subject)].some((id) => nets.has(id));
  return {
    up: pins.length > 0 || sources.some((source) => nets.has(source.nets[0])),
    down: ground || sources.some((source) => nets.has(source.nets[1])),
    ground,
    pins,
    nets,
  };
}
