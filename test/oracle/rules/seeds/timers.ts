/** Faults of timers and of the two sides of an analogWrite. */
import { code, lampOn } from '../additions';
import { rewrite } from '../mutate';
import type { Seed, SeedEdit } from '../seed';
import { type MakeSeeds, seed } from './book';

/** A lamp that is dimmed on a pin beside what takes its timer, and the same on one that is free. */
const timerShared: MakeSeeds = () =>
  (
    [
      ['telegraph', 'handle.common', 9, 5, ''],
      ['telegraph', 'handle.common', 10, 3, 'no encoder'],
      ['lock-gate', 'top.common', 10, 3, ''],
      ['beacon-and-horn', 'beacon.cathode', 3, 5, ''],
      ['beacon-and-horn', 'beacon.cathode', 11, 6, ''],
      ['strongbox', 'Q1.source', 9, 2, ''],
      ['strongbox', 'Q1.source', 10, 5, ''],
      ['fog-choir', 'eye.-', 3, 6, ''],
      ['fog-choir', 'eye.-', 11, 5, ''],
      ['scoreboard', 'p4.cathode', 5, 9, 'score'],
    ] as const
  ).flatMap(([build, ground, pin, free, note]): Seed[] => {
    const edits = (number: number): SeedEdit[] => [
      ...code({ setup: `pinMode(${number}, OUTPUT);`, loop: `analogWrite(${number}, 77);` }),
      ...lampOn(`D${number}`, ground),
      ...(note === 'score' ? [rewrite('{ 4, 5, 6, 7 }', '{ 4, 8, 6, 7 }'), ...moveScore] : []),
    ];
    const wrong = seed(
      'timer-shared',
      build,
      `a lamp dimmed on D${pin}`,
      edits(pin),
      [{ line: `analogWrite(${pin}` }],
      { says: [`D${pin}`] },
    );
    const right = seed('timer-shared', build, `a lamp dimmed on D${free}`, edits(free), [], { silent: true });
    return note === 'no encoder' ? [wrong] : [wrong, right];
  });

const moveScore: readonly SeedEdit[] = [{ path: ['wires', 2, 'from'], value: 'D8' }];

const pwmRead: MakeSeeds = () =>
  (
    [
      ['beacon-and-horn', 'beacon.cathode', 5],
      ['quay-lights', 'pass.cathode', 9],
      ['turnstile', 'tenth.cathode', 3],
      ['range-lights', 'rear.cathode', 5],
      ['bell-buoy', 'Q1.emitter', 9],
      ['star-wall', 's8.cathode', 4],
      ['winch', 'up.2', 6],
      ['safe-tilt', 'tilt.2', 3],
      ['tide-clock', 'screen.-', 10],
    ] as const
  ).flatMap(([build, ground, pin]): Seed[] => {
    const edits = (loop: string) => [
      ...code({ setup: `pinMode(${pin}, OUTPUT);`, loop }),
      ...lampOn(`D${pin}`, ground),
    ];
    return [
      seed(
        'pwm-read-digitally',
        build,
        `D${pin} dimmed and read`,
        edits(`analogWrite(${pin}, digitalRead(${pin}) ? 30 : 90);`),
        { line: `digitalRead(${pin})` },
        { says: [`D${pin}`] },
      ),
      seed(
        'pwm-read-digitally',
        build,
        `D${pin} switched and read`,
        edits(`digitalWrite(${pin}, !digitalRead(${pin}));`),
        [],
        { silent: true },
      ),
    ];
  });

/** Sixteen apart on a Pico: one slice, one channel. */
const pwmChannel: MakeSeeds = () =>
  (
    [
      ['aquarium-moon', 16, 0, 1],
      ['signal-box', 20, 4, 5],
      ['signal-box', 17, 1, 6],
      ['signal-box', 18, 2, 7],
      ['greenhouse', 16, 0, 8],
      ['greenhouse', 17, 1, 9],
      ['greenhouse', 19, 3, 8],
      ['aquarium-moon', 22, 6, 2],
    ] as const
  ).flatMap(([build, first, second, free]): Seed[] => {
    const edits = (other: number) => {
      const both = [first, other].filter(
        (pin) => !(build === 'aquarium-moon' && pin === 16) && !(build === 'signal-box' && pin === 2),
      );
      return [
        ...code({
          ...(both.length > 0 && { setup: both.map((pin) => `pinMode(${pin}, OUTPUT);`).join('\n  ') }),
          loop: [first, other]
            .filter((pin) => !(build === 'aquarium-moon' && pin === 16))
            .map((pin) => `analogWrite(${pin}, ${pin + 20});`)
            .join('\n  '),
        }),
        ...both.flatMap((pin, index) => lampOn(`GP${pin}`, 'GND', '1k', `extra${index}`)),
      ];
    };
    return [
      seed(
        'pwm-channel-shared',
        build,
        `GP${first} and GP${second} dimmed`,
        edits(second),
        [{ line: 'analogWrite(' }],
        { says: [`GP${first}`, `GP${second}`] },
      ),
      seed('pwm-channel-shared', build, `GP${first} and GP${free} dimmed`, edits(free), [], { silent: true }),
    ];
  });

export const TIMER_SEEDS: readonly MakeSeeds[] = [timerShared, pwmRead, pwmChannel];
