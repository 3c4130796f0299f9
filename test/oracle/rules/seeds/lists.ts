/** Slips in the lists of the manifest that break nothing: a wire twice, a colour, a value, a purpose forgotten. */
import { addWire, endsOf, set, wireAt } from '../mutate';
import type { SeedEdit } from '../seed';
import { type Book, type MakeSeeds, seed } from './book';

/** A plain wire of each build, by one of its ends; the same again, every second time the other way round. */
const PLAIN = [
  ['beacon-and-horn', 'horn.-'],
  ['boiler-watch', 'feedwater.data'],
  ['crane', 'jib.a'],
  ['crane', 'driver.in-1'],
  ['depth-sounder', 'sounder.trigger'],
  ['engine-room', 'restart.cathode'],
  ['lock-gate', 'store.+'],
  ['reef-strip', 'feed.+'],
  ['night-watch', 'panel.sck'],
  ['winch', 'feed.-'],
] as const;

const doubled: MakeSeeds = (book) => [
  ...PLAIN.map(([build, end], index) => {
    const hardware = book.hardware(build);
    const [a = '', b = ''] = endsOf(hardware.wires[wireAt(hardware, end)] ?? {});
    const wire = index % 2 === 0 ? { from: a, to: b } : { from: b, to: a };
    return seed('wire-doubled', build, `${a} and ${b} joined twice`, addWire(wire), [{ wire: end }], {
      says: [a, b],
      besides: ['position-shared'],
    });
  }),
  seed(
    'wire-doubled',
    'quay-lights',
    'a wire that a run holds already',
    addWire({ from: 'Rstop.2', to: 'stop.anode' }),
    [{ wire: 'stop' }, { wire: 'stop.anode' }],
    { says: ['Rstop.2', 'stop.anode'] },
  ),
  // The same net, by another way round: two ends that no other wire joins.
  seed(
    'wire-doubled',
    'reef-strip',
    'a second way to one net',
    addWire({ from: 'feed.+', to: 'store.+' }),
    [],
    {
      silent: true,
    },
  ),
  seed(
    'wire-doubled',
    'lock-gate',
    'a second way to ground',
    addWire({ from: 'store.-', to: 'bottom.common' }),
    [],
    { silent: true },
  ),
];

const colour = (book: Book, build: string, end: string, put: string): SeedEdit => ({
  path: ['wires', wireAt(book.hardware(build), end), 'colour'],
  value: put,
});

const misleads: MakeSeeds = (book) => [
  ...(
    [
      ['boiler-watch', 'feedwater.-', 'red'],
      ['boiler-watch', 'feedwater.+', 'black'],
      ['chart-room', '5V', 'black'],
      ['chart-room', 'receiver.-', 'red'],
      ['depth-sounder', '5V', 'black'],
      ['ferry-board', '3V3', 'black'],
      ['greenhouse', 'soil.-', 'Red'],
      ['reef-strip', 'feed.+', 'black'],
      ['lock-gate', 'cells.-', 'red'],
      ['map-drawer', 'RAW', 'BLACK'],
      ['aquarium-moon', 'knob.2', 'red'],
    ] as const
  ).map(([build, end, put]) =>
    seed('wire-colour-misleads', build, `${end} in ${put}`, colour(book, build, end, put), [{ wire: end }], {
      says: [put.toLowerCase()],
    }),
  ),
  ...(
    [
      ['boiler-watch', 'feedwater.-', 'blue'],
      ['chart-room', '5V', 'orange'],
      ['depth-sounder', 'sounder.trigger', 'red'],
      ['crane', 'driver.in-1', 'black'],
    ] as const
  ).map(([build, end, put]) =>
    seed('wire-colour-misleads', build, `${end} in ${put}`, colour(book, build, end, put), [], {
      silent: true,
    }),
  ),
];

const stock = (...resistors: readonly string[]): SeedEdit => ({ path: ['stock'], value: { resistors } });

/** Values near to what is there, so that nothing else is wrong. */
const notInStock: MakeSeeds = () => [
  ...(
    [
      ['beacon-and-horn', 'R1', '510', undefined],
      ['beacon-and-horn', 'R1', '475', undefined],
      ['beacon-and-horn', 'R1', '430', undefined],
      ['quay-lights', 'Rstop', '390', undefined],
      ['quay-lights', 'Rpass', '300', undefined],
      ['quay-lights', 'Rsoon', '560R', undefined],
      ['range-lights', 'Rfront', undefined, ['220', '470']],
      ['aquarium-moon', 'Rmoon', undefined, ['470', '680', '1k']],
      ['guest-counter', 'R1', undefined, ['470', '1k2']],
      ['light-tower', 'Reye', undefined, ['220', '8k2', '12k']],
    ] as const
  ).map(([build, part, value, resistors]) =>
    seed(
      'value-not-in-stock',
      build,
      value === undefined ? `a stock without ${part}` : `${part} at ${value}`,
      value === undefined ? stock(...(resistors ?? [])) : set(part, 'value', value),
      [{ part }],
      { says: [part] },
    ),
  ),
  ...(
    [
      ['beacon-and-horn', set('R1', 'value', '0.47k')],
      ['beacon-and-horn', set('R1', 'value', '560')],
      ['quay-lights', set('Rstop', 'value', '470R')],
      ['guest-counter', stock('0.47k', '1000')],
      ['range-lights', set('Rfront', 'value', '350')],
    ] as const
  ).map(([build, edit]) =>
    seed('value-not-in-stock', build, 'a value that is there', edit, [], { silent: true }),
  ),
];

const purpose: MakeSeeds = () => [
  ...(
    [
      // The horn is heard: with it three parts do something.
      ['beacon-and-horn', 'quay'],
      ['scoreboard', 'p2'],
      ['quay-lights', 'soon'],
      ['quay-lights', 'call'],
      ['cannon-deck', 'gun2'],
      ['crane', 'home'],
      ['lock-gate', 'cells'],
      ['pump-house', 'pump'],
      ['range-lights', 'rear'],
      ['pressure-gauge', 'bellows'],
      ['safe-tilt', 'tilt'],
      ['winch', 'up'],
    ] as const
  ).map(([build, part]) =>
    seed('purpose-missing', build, `${part} without one`, set(part, 'purpose'), [{ part }], { says: [part] }),
  ),
  ...(
    [
      ['quay-lights', ['Rstop']],
      ['beacon-and-horn', ['R1']],
      ['pump-house', ['surge']],
      // Two of the three: nobody means to write any.
      ['range-lights', ['front', 'rear']],
      ['quay-lights', ['stop', 'soon', 'call']],
    ] as const
  ).map(([build, parts]) =>
    seed(
      'purpose-missing',
      build,
      `${parts.join(', ')} without one`,
      parts.map((part) => set(part, 'purpose')),
      [],
      { silent: true },
    ),
  ),
];

export const LIST_SEEDS: readonly MakeSeeds[] = [doubled, misleads, notInStock, purpose];
