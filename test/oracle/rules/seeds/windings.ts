import { bridge, moveEnd, removeWires, set, swapEnds, turn } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';
import { lampRuns, names } from './lamps';

const motor = (resistance: string): object => ({ kind: 'dc-motor', resistance, purpose: 'x' });

const flybackMissing: MakeSeeds = ({ hardware }) => {
  const without = (build: string, winding: string, edits: readonly SeedEdit[], about: string): Seed =>
    seed('flyback-missing', build, about, edits, [{ part: winding }], { says: [winding] });
  const strongbox = hardware('strongbox');
  const bell = hardware('bell-buoy');
  const dropPath = (build: string, diode: string): SeedEdit[] => {
    const index = hardware(build).wires.findIndex(({ path }) => path?.includes(diode));
    return [{ path: ['wires', index] }, { path: ['parts', diode] }];
  };
  return [
    without('strongbox', 'bolt', dropPath('strongbox', 'surge'), 'the bolt without its diode'),
    without('harbour-radio', 'relay', dropPath('harbour-radio', 'surge'), 'the relay without its diode'),
    without('engine-room', 'fan', dropPath('engine-room', 'surge'), 'the fan without its diode'),
    without(
      'bell-buoy',
      'striker',
      [...removeWires(bell, 'flyback.anode', 'flyback.cathode'), { path: ['parts', 'flyback'] }],
      'the relay without its diode',
    ),
    without(
      'map-drawer',
      'map',
      [{ path: ['parts', 'map'], value: motor('40 ohm') }],
      'a motor in the lamp’s place',
    ),
    without(
      'sluice',
      'lamp',
      [{ path: ['parts', 'lamp'], value: motor('60 ohm') }],
      'a motor in the lamp’s place',
    ),
    without(
      'cannon-deck',
      'gun1',
      [
        // The driver's diodes end at its common terminal: without a supply there they catch nothing.
        ...[6, 7, 8].flatMap((wire) => moveEnd(hardware('cannon-deck'), 'driver.common', 'feed.+', wire)),
        { path: ['wires', 5] },
      ],
      'the driver’s common terminal left open',
    ),
    without(
      'strongbox',
      'bolt',
      [...dropPath('strongbox', 'surge'), set('Q1', 'type', 'irlb8721')],
      'the same behind another transistor',
    ),
    without(
      'engine-room',
      'fan',
      [
        ...dropPath('engine-room', 'surge'),
        {
          path: ['parts', 'fan'],
          value: { kind: 'solenoid', volts: '5', resistance: '30 ohm', purpose: 'x' },
        },
      ],
      'a solenoid in the fan’s place',
    ),
    seed(
      'flyback-missing',
      'strongbox',
      'a Schottky diode instead',
      [{ path: ['parts', 'surge'], value: { kind: 'schottky-diode', purpose: 'x' } }],
      [],
      { silent: true },
    ),
    seed(
      'flyback-missing',
      'strongbox',
      'the diode’s far end at the supply',
      moveEnd(strongbox, 'bolt.1', 'feed.+'),
      [],
      { silent: true },
    ),
  ];
};

const flybackReversed: MakeSeeds = ({ hardware }) => {
  const round = (build: string, diode: string, about: string, more: readonly SeedEdit[] = []): Seed => {
    const own = hardware(build);
    const inPath = own.wires.some(({ path }) => path?.includes(diode));
    const edits = inPath
      ? turn(own, diode, 'anode', 'cathode')
      : swapEnds(own, `${diode}.anode`, `${diode}.cathode`);
    return seed('flyback-reversed', build, about, [...more, ...edits], [{ part: diode }], { says: [diode] });
  };
  const signal = (build: string, diode: string): Seed =>
    round(build, diode, `${diode} round, a 1N4148`, [
      { path: ['parts', diode], value: { kind: 'diode', type: '1n4148', purpose: 'x' } },
    ]);
  return [
    round('strongbox', 'surge', 'the bolt’s diode round'),
    round('harbour-radio', 'surge', 'the relay’s diode round'),
    round('engine-room', 'surge', 'the fan’s diode round'),
    round('bell-buoy', 'flyback', 'the relay’s diode round'),
    ...[
      signal('strongbox', 'surge'),
      signal('harbour-radio', 'surge'),
      signal('engine-room', 'surge'),
      signal('bell-buoy', 'flyback'),
    ],
  ];
};

/** A motor in a lamp's place, and no resistor. */
const needsDriver: MakeSeeds = (book) =>
  lampRuns(names(book), book.hardware)
    .filter(
      ({ build, lamp }) =>
        !book.hardware(build).wires.some((wire) => JSON.stringify(wire).includes(`"${lamp}.`)),
    )
    .map(({ build, pin, resistor, lamp }) =>
      seed(
        'load-needs-driver',
        build,
        `a motor straight on ${pin}`,
        [...bridge(book.hardware(build), resistor), { path: ['parts', lamp], value: motor('30 ohm') }],
        [{ part: lamp }],
        { says: [lamp, pin], besides: ['flyback-missing'] },
      ),
    );

const bareBase: MakeSeeds = ({ hardware }) =>
  (
    [
      ['bell-buoy', ['2n2222', 'bc337', 'bc547', 'tip120']],
      ['harbour-radio', ['2n2222', 'bc337', 'tip120']],
      ['sluice', ['2n2907', 'bc327']],
    ] as const
  ).flatMap(([build, types]) =>
    types.map((type) =>
      seed(
        'base-resistor-missing',
        build,
        `a ${type} without its base resistor`,
        [set('Q1', 'type', type), ...bridge(hardware(build), 'Rbase')],
        [{ part: 'Q1' }],
        { says: ['Q1'] },
      ),
    ),
  );

export const WINDING_SEEDS: readonly MakeSeeds[] = [flybackMissing, flybackReversed, needsDriver, bareBase];
