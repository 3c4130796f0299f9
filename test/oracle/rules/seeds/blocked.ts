/** Diodes in a feed, both ways round. */
import { addPart, addWire, endsOf } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';

const blockedFeeds: MakeSeeds = ({ hardware }) => {
  /** Cuts the wire between a supply and what it feeds, and puts a diode in: by its end that looks at the supply. */
  const put = (
    build: string,
    from: string,
    to: string,
    near: 'anode' | 'cathode',
    kind: string,
  ): SeedEdit[] => {
    const index = hardware(build).wires.findIndex((wire) => endsOf(wire).join() === `${from},${to}`);
    if (index < 0) throw new Error(`no wire from ${from} to ${to}`);
    const far = near === 'anode' ? 'cathode' : 'anode';
    return [
      { path: ['wires', index], value: { from, to: `Xin.${near}` } },
      addPart('Xin', { kind, purpose: 'x' }),
      addWire({ from: `Xin.${far}`, to }),
    ];
  };
  const both = (build: string, from: string, to: string, kind = 'diode', minus = false): Seed[] => {
    const [wrong, right] = minus ? (['anode', 'cathode'] as const) : (['cathode', 'anode'] as const);
    const make = (near: 'anode' | 'cathode'): Seed =>
      seed(
        'series-diode-reversed',
        build,
        `a ${kind} from ${from} to ${to}, its ${near} at ${from}`,
        put(build, from, to, near, kind),
        [{ part: 'Xin' }],
        near === wrong ? { says: ['Xin'] } : { silent: true },
      );
    return [make(wrong), make(right)];
  };
  return [
    ...both('chart-room', '5V', 'receiver.+'),
    ...both('crane', 'feed.+', 'driver.+'),
    ...both('depth-sounder', '5V', 'sounder.+', 'schottky-diode'),
    ...both('ghost-ship', '5V', 'guest.+', 'schottky-diode'),
    ...both('pilot-radio', '5V', 'radio.+', 'schottky-diode'),
    ...both('ticket-reader', '5V', 'reader.+', 'schottky-diode'),
    ...both('safe-tilt', 'feed.+', 'RAW'),
    ...both('winch', 'feed.+', 'bridge.+'),
    ...both('telegraph', 'feed.+', 'pointer.+', 'schottky-diode'),
    ...both('fog-choir', '5V', 'eye.+', 'schottky-diode'),
    ...both('sound-post', '3V3', 'player.+', 'schottky-diode'),
  ];
};

export const BLOCKED_SEEDS: readonly MakeSeeds[] = [blockedFeeds];
