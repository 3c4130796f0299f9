/** What happens to a chip from outside while a sketch runs: four scripts that every sketch is put through. */
import type { SketchFile } from '../firmware/compile-firmware';
import type { InputChange, RunConditions } from '../firmware/run-firmware';
import type { Chip } from './chips';
import { type Random, seeded } from './random';

export interface Script extends RunConditions {
  readonly title: 'low' | 'high' | 'random' | 'serial';
}

/** Simulated time, milliseconds. Waits of the sketch's own cost next to nothing of it, see skipped_delay. */
const MILLIS = 600;
const RANDOM_MILLIS = 1200;
/** A run that brought nothing new for so long is given up, milliseconds. */
const QUIET_MILLIS = 120;
const RANDOM_QUIET_MILLIS = 220;
/** The time that a doubtful claim of certainty is given, milliseconds. */
const LONG_MILLIS = 4000;
/** The chip with six timers takes the simulator five times as long; its runs are so much shorter. */
const SHORTER: Readonly<Record<Chip['name'], number>> = { uno: 1, leonardo: 1, mega: 0.6 };

/** The scripts of a sketch. @param longer More time, for claims that the usual time did not bear out. */
export function scriptsFor(chip: Chip, files: readonly SketchFile[], longer = false): readonly Script[] {
  const random = seeded(files.map(({ text }) => text).join('\n'));
  const steady = (level: 0 | 1): readonly InputChange[] => [
    ...[...chip.ports.values()].sort().map((pin) => ({ atMillis: 0, pin, level })),
    ...channels(chip).map((channel) => ({ atMillis: 0, channel, millivolts: level * 4900 })),
  ];
  const usual = (time: number) => Math.round(time * SHORTER[chip.name]);
  const millis = longer ? LONG_MILLIS : usual(MILLIS);
  const randomMillis = longer ? LONG_MILLIS : usual(RANDOM_MILLIS);
  const changing = randomInputs(chip, random, randomMillis);
  const typing = [...steady(1), ...typed(files, random, randomMillis)];
  const [quiet, randomQuiet] = longer ? [0, 0] : [usual(QUIET_MILLIS), usual(RANDOM_QUIET_MILLIS)];
  return [
    { title: 'low', millis, quietMillis: quiet, inputs: steady(0) },
    { title: 'high', millis, quietMillis: quiet, inputs: steady(1) },
    { title: 'random', millis: randomMillis, quietMillis: randomQuiet, inputs: changing },
    { title: 'serial', millis: randomMillis, quietMillis: randomQuiet, inputs: typing },
  ];
}

function channels(chip: Chip): readonly number[] {
  return Array.from({ length: chip.channels }, (_, channel) => channel);
}

function randomInputs(chip: Chip, random: Random, millis: number): readonly InputChange[] {
  const pins = [...chip.ports.values()].sort();
  const inputs: InputChange[] = [];
  for (const pin of pins) {
    inputs.push({ atMillis: 0, pin, level: random.once(2) ? 0 : 1 });
  }
  for (let atMillis = 0; atMillis < millis; atMillis += 3) {
    for (let times = Math.ceil(pins.length / 8); times > 0; times -= 1) {
      inputs.push({ atMillis, pin: random.pick(pins), level: random.once(2) ? 0 : 1 });
    }
    const channel = random.below(chip.channels);
    inputs.push({ atMillis, channel, millivolts: random.below(5000) });
  }
  return inputs;
}

/** What somebody might type who has read the sketch: its own letters and words, and numbers. */
function typed(files: readonly SketchFile[], random: Random, millis: number): readonly InputChange[] {
  const words = new Set<string>(['7', '12', '255', '\n']);
  for (const { text } of files) {
    for (const [, letter = ''] of text.matchAll(/'([ -~])'/g)) {
      words.add(letter);
    }
    for (const [, word = ''] of text.matchAll(/"([a-zA-Z0-9 ]{1,12})"/g)) {
      words.add(`${word}\n`);
    }
  }
  const all = [...words];
  const inputs: InputChange[] = [];
  for (let atMillis = 20; atMillis < millis; ) {
    for (const letter of random.pick(all)) {
      inputs.push({ atMillis, byte: letter.charCodeAt(0) });
      // A byte takes about a millisecond at 9,600 baud.
      atMillis += 2;
    }
  }
  return inputs;
}
