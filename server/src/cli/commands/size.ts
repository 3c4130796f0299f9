/** `size`: what to take, and the sum that shows why. */
import { deliver } from '../deliver';
import { type Answer, OPTIONS, type Sizer } from '../size/answer';
import { readFigures } from '../size/figures';
import { DIVIDER, WIRE } from '../size/others';
import { BASE, PULL_UP, RC, SERIES } from '../size/resistors';
import {
  type CommandSpec,
  formatOption,
  type Given,
  OUTPUT,
  optionOf,
  Refusal,
  type Surroundings,
} from '../spec';
import { chooseBoard } from './boards';

const SIZERS: readonly Sizer[] = [SERIES, PULL_UP, DIVIDER, RC, BASE, WIRE];
/** Options that say how to print and not what to size. */
const PRINTING = ['format', 'output'];

export const size: CommandSpec = {
  name: 'size',
  summary:
    'Sizes a series resistor, a pull-up, a divider, an RC delay, a base resistor or a wire, and shows the sums.',
  places: {
    words: 'WHAT',
    least: 1,
    most: 1,
    choices: SIZERS.map(({ what }) => what),
  },
  options: [...OPTIONS, formatOption(['text', 'json']), OUTPUT],
  about: [
    'A figure is written with its unit, as in 20mA, 4k7, 100nF, 0.25W, 5%, 20cm. A range is written 4.5..5.5V.',
    [
      'WHAT is one of these, each with its options',
      ...SIZERS.flatMap(({ what, about, options }) => [
        `  ${what.padEnd(9)}${about}`,
        ...chunks(
          options.map((option) => `--${option}`),
          6,
        ).map((row) => `             ${row.join(' ')}`),
      ]),
    ].join('\n'),
    'What is chosen holds at the worst corner of all tolerances. The last lines are the sums, with usual figures.',
  ],
  exits: [
    [0, 'it was sized'],
    [1, 'nothing fits; why is said'],
    [2, 'a figure is missing or is none'],
  ],
  examples: [
    ['size series --board nano-v3 --forward 2.1V --current 6mA', 'a lamp on a pin of that board'],
    ['size series --supply 4.5..5.5V --forward 2V --limit 10mA --stock 220,330,470,1k', 'out of a drawer'],
    ['size pull-up --supply 3.3V --current 3mA --low 0.4V --capacitance 100pF --time 300ns', 'of a bus line'],
    ['size divider --input 11..14.4V --wanted 4.5V', 'a battery at an analogue input'],
    [
      'size rc --supply 5V --threshold 3V --time 20ms --capacitance 1uF',
      'the least resistor that makes 20 ms',
    ],
    ['size base --board nano-v3 --load 200mA --gain 100', 'between a pin and a transistor'],
    ['size wire --gauge 24 --length 3m --current 1.5A --supply 12V', 'volts that stay in the wire'],
  ],
  run,
};

async function run(given: Given, here: Surroundings): Promise<number> {
  const sizer = SIZERS.find(({ what }) => what === given.places[0]);
  if (sizer === undefined) {
    throw new Refusal(`Say what to size: ${SIZERS.map(({ what }) => what).join(', ')}.`);
  }
  for (const name of Object.keys(given.options)) {
    if (!PRINTING.includes(name) && !sizer.options.includes(name)) {
      const own = sizer.options.map((option) => `--${option}`).join(', ');
      throw new Refusal(`size ${sizer.what} takes no --${name}. It takes ${own}.`);
    }
  }
  const board = optionOf(given, 'board');
  const answer = sizer.size(readFigures(given, board === undefined ? undefined : chooseBoard(board, here)));
  const json = optionOf(given, 'format') === 'json';
  if (!answer.ok && !json) {
    here.err(`wiretrue: ${answer.why}\n`);
    return 1;
  }
  deliver(json ? asJson(sizer.what, answer) : asText(answer), given, here);
  return answer.ok ? 0 : 1;
}

function asText(answer: Answer): string {
  return answer.ok
    ? [`${answer.take}`, ...answer.lines, ...answer.sums.map(({ text }) => `  ${text}`), ''].join('\n')
    : '';
}

function asJson(what: string, answer: Answer): string {
  const said = answer.ok
    ? { take: answer.take, figures: answer.figures, sums: answer.sums.map(({ text }) => text) }
    : { why: answer.why };
  return `${JSON.stringify({ format: 1, what, fits: answer.ok, ...said }, undefined, 2)}\n`;
}

function chunks<T>(all: readonly T[], most: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / most) }, (_, at) =>
    all.slice(at * most, (at + 1) * most),
  );
}
