/**
 * A chip's pin as elements: an output is a rail behind a resistance, an input leaks a little either way, a pull-up is
 * a rail behind a large resistance. So a pin is never ideal, and shorting it has a current.
 */
import type { Element } from '../base/circuit';
import { exactly, type Range } from '../base/range';

export interface PinPlace {
  readonly id: string;
  readonly node: string;
  readonly ground: string;
}

/** What a data sheet says of the pin. */
export interface PinFigures {
  /** Volts of the rail that feeds it. */
  readonly volts: Range;
  /** Ohms to the rail when high, and to ground when low. */
  readonly highOhms: Range;
  readonly lowOhms: Range;
  readonly pullUpOhms: Range;
  /** Those of the pull-up where absent. */
  readonly pullDownOhms?: Range;
  /** Amperes that an input leaks at the most, either way; none where absent. */
  readonly leakAmps?: number;
}

export type PinDrive = 'high' | 'low' | 'input' | 'pull-up' | 'pull-down';

/** The elements of a pin in one state. Its own current stands under its id, positive out of the pin when high. */
export function pinElements(place: PinPlace, figures: PinFigures, drive: PinDrive): readonly Element[] {
  const { id, node, ground } = place;
  const { volts, highOhms, lowOhms, pullUpOhms, pullDownOhms = pullUpOhms, leakAmps = 0 } = figures;
  const rail = (ohms: Range): Element => ({ type: 'source', id, plus: node, minus: ground, volts, ohms });
  const down = (ohms: Range): Element => ({
    type: 'source',
    id,
    plus: node,
    minus: ground,
    volts: exactly(0),
    ohms,
  });
  if (drive === 'high') {
    return [rail(highOhms)];
  }
  if (drive === 'low') {
    return [down(lowOhms)];
  }
  const leak: readonly Element[] =
    leakAmps > 0
      ? [
          {
            type: 'current',
            id: `${id}:leak`,
            from: node,
            to: ground,
            amps: { min: -leakAmps, typ: 0, max: leakAmps },
          },
        ]
      : [];
  if (drive === 'pull-up') {
    return [rail(pullUpOhms), ...leak];
  }
  return drive === 'pull-down' ? [down(pullDownOhms), ...leak] : leak;
}
