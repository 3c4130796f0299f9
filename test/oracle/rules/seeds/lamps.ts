/** Faults of lamps and of the current through a pin. */
import { bridge, endsOf, type Hardware, set, turn } from '../mutate';
import type { Seed } from '../seed';
import { type MakeSeeds, seed } from './book';

interface LampRun {
  readonly build: string;
  readonly pin: string;
  readonly resistor: string;
  readonly lamp: string;
}

/** Runs of pin, resistor, lamp and on: what most lamps hang on. */
function lampRuns(builds: readonly string[], hardware: (build: string) => Hardware): LampRun[] {
  return builds.flatMap((build) => {
    const { parts, wires } = hardware(build);
    return wires.flatMap((wire): LampRun[] => {
      const [pin = '', resistor = '', lamp = ''] = endsOf(wire);
      const fits = parts[resistor]?.kind === 'resistor' && parts[lamp]?.kind === 'led' && !pin.includes('.');
      return fits ? [{ build, pin, resistor, lamp }] : [];
    });
  });
}

const names = (book: { readonly builds: readonly { readonly name: string }[] }): string[] =>
  book.builds.map(({ name }) => name);

const lampUnlimited: MakeSeeds = (book) => [
  ...lampRuns(names(book), book.hardware).map(({ build, resistor, lamp }) =>
    seed(
      'lamp-unlimited',
      build,
      `${lamp} without ${resistor}`,
      bridge(book.hardware(build), resistor),
      { part: lamp },
      { says: [lamp] },
    ),
  ),
  ...['red', 'green', 'blue'].map((colour, index) =>
    seed(
      'lamp-unlimited',
      'ghost-ship',
      `${colour} of the three-coloured lamp straight on its pin`,
      bridge(book.hardware('ghost-ship'), ['Rr', 'Rg', 'Rb'][index] ?? ''),
      { part: 'glow' },
      { says: ['glow'] },
    ),
  ),
  seed(
    'lamp-unlimited',
    'ticket-digit',
    'a segment without its resistor',
    bridge(book.hardware('ticket-digit'), 'Rd'),
    { part: 'digit' },
    { says: ['digit'] },
  ),
  seed(
    'lamp-unlimited',
    'stage-cue',
    'the optocoupler without its resistor',
    bridge(book.hardware('stage-cue'), 'Rcue'),
    { part: 'cue' },
    { says: ['cue'] },
  ),
  seed(
    'lamp-unlimited',
    'engine-room',
    'the button’s lamp straight on its pin',
    bridge(book.hardware('engine-room'), 'Rrun'),
    { part: 'restart' },
    { says: ['restart'] },
  ),
];

const lampReversed: MakeSeeds = (book) => [
  ...lampRuns(names(book), book.hardware).map(({ build, lamp }) =>
    seed(
      'lamp-reversed',
      build,
      `${lamp} the wrong way round`,
      turn(book.hardware(build), lamp, 'anode', 'cathode'),
      { part: lamp },
      { says: [lamp] },
    ),
  ),
];

/** Highest volts of the rail, as the board files give them. */
const RAIL: Readonly<Record<string, number>> = {
  'uno-r3': 5.25,
  'nano-v3': 5.25,
  'mega-2560': 5.25,
  pico: 3.4,
  'pico-w': 3.4,
  'uno-r4-minima': 5.25,
  zero: 3.4,
  'nodemcu-esp8266': 3.4,
  'nucleo-f103rb': 3.4,
  'teensy-4-0': 3.4,
  'esp32-devkitc': 3.4,
};

interface LimitRow {
  readonly board: string;
  /** Least ohms of an output that is high. */
  readonly ohms: number;
  readonly working: number;
  readonly absolute: number;
}

/** Read from the board files by hand: the sums below are then done without them. */
const LIMITS: readonly LimitRow[] = [
  { board: 'uno-r3', ohms: 15, working: 0.02, absolute: 0.04 },
  { board: 'nano-v3', ohms: 15, working: 0.02, absolute: 0.04 },
  { board: 'pico', ohms: 30, working: 0.004, absolute: 0.012 },
  { board: 'pico-w', ohms: 30, working: 0.004, absolute: 0.012 },
  { board: 'uno-r4-minima', ohms: 60, working: 0.004, absolute: 0.008 },
  { board: 'zero', ohms: 24, working: 0.007, absolute: 0.01 },
  { board: 'nucleo-f103rb', ohms: 15, working: 0.008, absolute: 0.025 },
  { board: 'esp32-devkitc', ohms: 16.5, working: 0.02, absolute: 0.04 },
];

/**
 * A plain resistor from the pin to ground in the lamp's place leaves no doubt of the sum: the most that flows is the
 * highest rail over the least resistances. Three percent over the limit has to be told, three percent under it not.
 */
function overSeeds(
  rule: 'pin-over-recommended' | 'pin-over-absolute',
  limit: (row: LimitRow) => number,
): MakeSeeds {
  return (book) =>
    lampRuns(names(book), book.hardware).flatMap(({ build, pin, resistor, lamp }): Seed[] => {
      const hardware = book.hardware(build);
      const row = LIMITS.find(({ board }) => board === hardware.board);
      const whole = hardware.wires.some((wire) => endsOf(wire).some((end) => end.startsWith(`${lamp}.`)));
      if (!row || whole) return [];
      const value = (share: number): string => {
        const ohms = (RAIL[row.board] ?? 0) / (limit(row) * share) - row.ohms;
        return (ohms / 0.99).toFixed(1);
      };
      const edits = (share: number) => [
        ...bridge(hardware, lamp),
        set(resistor, 'value', value(share)),
        set(resistor, 'tolerance', '1%'),
        set(resistor, 'power', '3 W'),
      ];
      const besides = rule === 'pin-over-recommended' ? [] : ['pin-over-recommended'];
      const driven = ['digitalWrite(', 'analogWrite(', 'PORTB |='].map((line) => ({ line }));
      const about = `a resistor alone on ${pin} that draws`;
      return [
        seed(rule, build, `${about} 3 % too much`, edits(1.03), driven, { says: [pin] }),
        seed(rule, build, `${about} 3 % less than the limit`, edits(0.97), [], { silent: true, besides }),
      ];
    });
}

export const LAMP_SEEDS: readonly MakeSeeds[] = [
  lampUnlimited,
  lampReversed,
  overSeeds('pin-over-recommended', ({ working }) => working),
  overSeeds('pin-over-absolute', ({ absolute }) => absolute),
];

export { lampRuns, names };
