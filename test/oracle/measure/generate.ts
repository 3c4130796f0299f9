/**
 * Sketches made from a grammar of the ways in which pins are written, with the answers that follow from how each was
 * made: which pins get which mode and level. The same seed gives the same sketches.
 */
import type { SketchFacts } from '../../../server/src/base/pin-use';
import type { CorpusSketch } from './corpus';
import { type Random, seeded } from './random';
import { WAYS } from './ways';

export interface MadeSketch extends CorpusSketch {
  /** Everything it does to pins, and nothing else: `mode 7 output`, `write 7 1`, `read 4`. */
  readonly answers: readonly string[];
}

/** What a way of writing pins puts into the sketch that is being made. */
export interface Making {
  readonly random: Random;
  /** A pin that nothing else uses. */
  pin(): number;
  /** Pins in a row. */
  pins(count: number): readonly number[];
  /** A name that nothing else has. */
  name(style?: 'camel' | 'upper' | 'type'): string;
  /** Text above all functions. */
  global(text: string): void;
  setup(text: string): void;
  loop(text: string): void;
  expect(answer: string): void;
}

const WORDS =
  'bow stern crane lamp horn winch quay buoy mast gate pump valve bell lock deck rope anchor hatch pier light'.split(
    ' ',
  );

/** @param count How many sketches. */
export function generateSketches(seed: string, count: number): readonly MadeSketch[] {
  return Array.from({ length: count }, (_, index) => makeSketch(`${seed}-${index}`));
}

function makeSketch(seed: string): MadeSketch {
  const random = seeded(seed);
  const free = Array.from({ length: 18 }, (_, index) => index + 2);
  const used = new Set<string>();
  const parts = { global: [] as string[], setup: [] as string[], loop: [] as string[] };
  const answers = new Set<string>();
  const making: Making = {
    random,
    pin: () => free.splice(random.below(free.length), 1)[0] ?? 13,
    pins: (wanted) => Array.from({ length: wanted }, () => making.pin()),
    name: (style = 'camel') => freshName(random, used, style),
    global: (text) => parts.global.push(text),
    setup: (text) => parts.setup.push(text),
    loop: (text) => parts.loop.push(text),
    expect: (answer) => answers.add(answer),
  };
  // A way takes at most four pins: eighteen are enough for four of them.
  for (let times = 2 + random.below(3); times > 0; times -= 1) {
    random.pick(WAYS)(making);
  }
  return {
    feature: 'generated',
    name: seed,
    chip: 'uno',
    files: [{ name: 'made.ino', text: layOut(parts, random) }],
    answers: [...answers].sort(),
  };
}

function freshName(random: Random, used: Set<string>, style: 'camel' | 'upper' | 'type'): string {
  for (;;) {
    const words = [random.pick(WORDS), random.pick(WORDS)];
    const [first = '', second = ''] = words;
    const raised = second.slice(0, 1).toUpperCase() + second.slice(1);
    const camel = first + raised;
    // The names are told apart without regard to case, so that a macro never catches a variable.
    const key = camel.toLowerCase();
    if (first !== second && !used.has(key)) {
      used.add(key);
      const upper = `${first}_${second}`.toUpperCase();
      return style === 'upper'
        ? upper
        : style === 'type'
          ? camel.slice(0, 1).toUpperCase() + camel.slice(1)
          : camel;
    }
  }
}

function layOut(
  parts: {
    readonly global: readonly string[];
    readonly setup: readonly string[];
    readonly loop: readonly string[];
  },
  random: Random,
): string {
  const indent = random.pick(['  ', '\t', '    ']);
  const brace = random.once(3) ? '\n{' : ' {';
  const body = (lines: readonly string[]) =>
    lines
      .flatMap((text) => text.split('\n'))
      .map((line) => `${indent}${line}\n`)
      .join('');
  const text = [
    `${parts.global.join('\n')}\n`,
    `void setup()${brace}\n${body(parts.setup)}}\n`,
    `void loop()${brace}\n${body([...parts.loop, 'delay(5);'])}}\n`,
  ].join('\n');
  return random.once(6) ? text.replaceAll('\n', '\r\n') : text;
}

export interface Answered {
  readonly name: string;
  /** Answers that the layer does not give. */
  readonly missing: readonly string[];
  /** What it gives and the sketch does not do. */
  readonly extra: readonly string[];
}

/** The layer's facts against the known answers. */
export function compareAnswers(sketch: MadeSketch, facts: SketchFacts): Answered {
  const given = new Set<string>();
  for (const { action, pins, value, modes = [] } of facts.uses) {
    if (!['mode', 'write', 'read', 'analog-read', 'pwm', 'tone'].includes(action)) {
      continue;
    }
    const valued = action === 'mode' || action === 'write';
    const words = action === 'mode' ? modes : value?.kind === 'known' ? value.values : ['unknown'];
    for (const pin of pins.kind === 'known' ? pins.values : ['unknown']) {
      for (const word of valued ? words : ['']) {
        given.add(`${action} ${pin} ${word}`.trim());
      }
    }
  }
  return {
    name: sketch.name,
    missing: sketch.answers.filter((answer) => !given.has(answer)),
    extra: [...given].filter((one) => !sketch.answers.includes(one)),
  };
}
