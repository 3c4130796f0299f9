/** Faults of the manifest as a paper: names, positions, wires that lead nowhere, loops that were not followed. */
import { addPart, addWire, endsOf, moveEnd, removeWires, rewrite } from '../mutate';
import { type MakeSeeds, seed } from './book';

const manifestFault: MakeSeeds = () => {
  const text = (
    build: string,
    find: string,
    put: string,
    place: string,
    says: readonly string[],
    besides: readonly string[] = [],
  ) =>
    seed(
      'manifest-fault',
      build,
      `"${put}" for "${find}"`,
      { find, put, file: 'hardware.jsonc' },
      { text: place },
      { says, besides },
    );
  return [
    text(
      'beacon-and-horn',
      '"R1", "beacon", "GND"',
      '"R1", "beakon", "GND"',
      '"beakon"',
      ['beakon', 'beacon'],
      ['idle-wire', 'unwired-pin', 'unwired-terminal', 'part-unwired'],
    ),
    text(
      'quay-lights',
      '"kind": "tact-switch"',
      '"kind": "tact-swich"',
      'tact-swich',
      ['tact-swich', 'tact-switch'],
      ['unwired-pin', 'idle-wire', 'floating-input'],
    ),
    text(
      'lock-gate',
      '"gate.signal"',
      '"gate.signl"',
      'gate.signl',
      ['signl', 'signal'],
      ['unwired-pin', 'unwired-terminal', 'idle-wire'],
    ),
    text('fog-choir', '"board": "uno-r3"', '"board": "uno-r33"', 'uno-r33', ['uno-r33']),
    text(
      'signal-box',
      '"value": "470", "purpose": "limits danger"',
      '"value": "470 V", "purpose": "limits danger"',
      '470 V',
      ['value'],
    ),
    text('light-tower', '"colour": "orange", "purpose"', '"color": "orange", "purpose"', '"color"', [
      'color',
      'colour',
    ]),
    text('mooring-post', '"colour": "amber"', '"colour": "ambre"', 'ambre', ['ambre', 'amber']),
    text(
      'dock-bell',
      '["D7", "bell", "GND"]',
      '["D17", "bell", "GND"]',
      'D17',
      ['D17'],
      ['unwired-pin', 'unwired-terminal', 'idle-wire'],
    ),
    text('crane', '"maxCurrent": "2 A"', '"maxCurrent": "2 Ohm"', '2 Ohm', ['maxCurrent']),
    text('porthole', '"format": 1', '"format": 7', '7', ['7']),
    text(
      'range-lights',
      '"key": { "kind"',
      '"D4": { "kind"',
      '"D4"',
      ['D4'],
      ['unwired-pin', 'idle-wire', 'floating-input', 'unwired-terminal'],
    ),
    text(
      'toy-organ',
      '"from": "D2", "to"',
      '"from": "D2", "too"',
      '"too"',
      ['too'],
      ['unwired-pin', 'unwired-terminal', 'idle-wire'],
    ),
  ];
};

const positionShared: MakeSeeds = ({ hardware }) => {
  const same = (build: string, pin: string, position: string, ends: readonly string[]) =>
    seed(
      'position-shared',
      build,
      `two wires at ${pin}@${position}`,
      ends.flatMap((end) =>
        moveEnd(
          hardware(build),
          pin,
          `${pin}@${position}`,
          hardware(build).wires.findIndex((wire) => endsOf(wire).includes(end) && endsOf(wire).includes(pin)),
        ),
      ),
      { wire: pin },
      { says: [pin] },
    );
  return [
    same('beacon-and-horn', 'GND', 'power.6', ['beacon', 'quay']),
    same('quay-lights', 'GND', 'power.7', ['stop', 'call.2b']),
    same('tide-column', 'GND', 'right.12', ['bar.cathode-1', 'float.2']),
    same('crane', 'GND', 'power.6', ['driver.-', 'home.common']),
    same('signal-box', 'GND', 'left.3', ['danger', 'clear']),
    same('light-tower', 'GND', 'j1.14', ['lantern', 'test']),
    same('dock-bell', 'GND', 'analog.10', ['ring', 'bell']),
    same('map-drawer', 'GND', 'left.4', ['Q1.source', 'drawer']),
    same('turnstile', 'GND', 'left.14', ['beam', 'tenth']),
    same('scoreboard', 'GND', 'power.6', ['p1', 'bell']),
  ];
};

const danglingWire: MakeSeeds = () => [
  ...(
    [
      ['beacon-and-horn', 'GND@power.6', 'GND@power.7'],
      ['crane', 'GND@even.18', 'GND@odd.18'],
      ['signal-box', 'GND@left.3', 'GND@right.3'],
      ['aquarium-moon', 'GND@left.8', 'GND@left.13'],
      ['mooring-post', 'GND@j1.1', 'GND@j3.1'],
      ['dock-bell', '3V3@digital.6', '3V3@analog.11'],
    ] as const
  ).map(([build, from, to]) =>
    seed(
      'dangling-wire',
      build,
      `a wire from ${from} to ${to}`,
      addWire({ from, to }),
      { wire: from.split('@')[0] ?? '' },
      { says: [from.split('@')[0] ?? ''], besides: ['position-shared'] },
    ),
  ),
  ...['quay-lights', 'winch', 'weather-mast', 'crane', 'scoreboard', 'telegraph'].map((build) =>
    seed(
      'dangling-wire',
      build,
      'a wire to a hole that is joined to nothing',
      [addPart('extra', { kind: 'resistor', value: '1k' }), addWire({ path: ['NC', 'extra', 'RST'] })],
      { wire: 'NC' },
      { says: ['NC'] },
    ),
  ),
];

const unwiredTerminal: MakeSeeds = ({ hardware }) => {
  const drop = (
    build: string,
    end: string,
    part: string,
    terminal: string,
    besides: readonly string[] = [],
  ) =>
    seed(
      'unwired-terminal',
      build,
      `no wire to ${part}.${terminal}`,
      removeWires(hardware(build), end),
      { part },
      { says: [part], besides },
    );
  return [
    drop('beacon-and-horn', 'horn.-', 'horn', '-'),
    drop('lock-gate', 'gate.signal', 'gate', 'signal', ['unwired-pin']),
    drop('crane', 'feed.-', 'feed', '-', ['grounds-apart', 'supply-too-low']),
    drop('tide-column', 'float.1', 'float', '1'),
    drop('harbour-windows', 'U1.clear', 'U1', 'clear'),
    drop('weather-mast', 'air.data', 'air', 'data', ['unwired-pin']),
    drop('crane', 'stick.y', 'stick', 'y', ['unwired-pin']),
    drop('crane', 'jib.c', 'jib', 'c'),
    drop('strongbox', 'pad.row-2', 'pad', 'row-2', ['unwired-pin']),
    drop('tide-clock', 'setKey.2b', 'setKey', '2b', ['button-never-seen']),
    drop('log-book', 'card.sck', 'card', 'sck'),
    drop('fog-choir', 'eye.trigger', 'eye', 'trigger', ['unwired-pin']),
    drop('greenhouse', 'soil.+', 'soil', '+'),
  ];
};

/** What the sketch layer does not follow to its end: it has to say so, and where. */
const sketchLimit: MakeSeeds = () => {
  const late = (build: string, find: string, limit: string, put: string) =>
    seed(
      'sketch-limit',
      build,
      `a loop of ${limit} rounds that does something late`,
      rewrite(
        find,
        `for (unsigned long n = 0; n < ${limit}; n++) {\n    if (n == ${limit} - 7) ${put}\n  }\n  ${find}`,
      ),
      { line: 'for (unsigned long n' },
    );
  return [
    late(
      'beacon-and-horn',
      'if (digitalRead(quayButton) == LOW) {',
      '400000UL',
      'digitalWrite(beaconPin, LOW);',
    ),
    late('tide-column', 'int level = map(', '300000UL', 'digitalWrite(column[0], LOW);'),
    late('turnstile', 'digitalWrite(tenthLamp, guestsNow', '200000UL', 'digitalWrite(tenthLamp, LOW);'),
    late('signal-box', 'const bool pulled', '1000000UL', 'digitalWrite(DANGER, LOW);'),
    late('aquarium-moon', 'analogWrite(kMoonPin', '150000UL', 'analogWrite(kMoonPin, 0);'),
    late('boiler-watch', 'boiler.requestTemperatures', '999999UL', 'digitalWrite(SOUNDER, LOW);'),
    late('engine-room', 'int reading = analogRead', '500000UL', 'analogWrite(fan, 0);'),
    late('guest-counter', 'bool isDown = digitalRead', '250000UL', 'digitalWrite(evenLamp, LOW);'),
  ];
};

export const PAPER_SEEDS: readonly MakeSeeds[] = [
  ...[manifestFault, positionShared, danglingWire, unwiredTerminal, sketchLimit],
];
