/** Fuses with the most that flows through them. */
import type { Range } from '../../base/range';
import { worst } from '../../base/range';
import type { Subject } from '../subject';
import { type PlacedOf, placedOf } from './supplies';
import { toldRegions } from './told-regions';
import { worstState } from './views';

export interface Fuse {
  readonly fuse: PlacedOf<'resistor'>;
  /** Amperes. */
  readonly rated: number;
  /** Without sign. */
  readonly amps: Range;
  /** State in words in which that flows. */
  readonly state: string;
}

export function fusesOf(subject: Subject): readonly Fuse[] {
  return placedOf(subject, 'resistor').flatMap((fuse) => {
    const rated = fuse.primitive.maxAmps;
    const region = subject.regions.find((candidate) => candidate.elements.includes(fuse));
    const found = region && rated !== undefined && worstState(subject.points(region), fuse.id);
    if (!found || rated === undefined || toldRegions(subject).has(region)) return [];
    const sides = [Math.abs(found.amps.min), Math.abs(found.amps.max)];
    const amps = { min: Math.min(...sides), typ: Math.abs(found.amps.typ), max: worst(found.amps) };
    return [{ fuse, rated, amps, state: found.state.words }];
  });
}
