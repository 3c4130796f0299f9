/** `bands`: from a resistor's value to its coloured bands, and back. */
import { formatQuantity, formatTolerance, parseQuantity, parseTolerance } from '../../base/quantity';
import {
  type BandColour,
  bandsFor,
  digitCode,
  isPreferred,
  letterCode,
  readBands,
  SERIES_NAMES,
} from '../../circuit';
import { deliver } from '../deliver';
import { nearest } from '../nearest';
import { type CommandSpec, formatOption, type Given, OUTPUT, optionOf, Refusal } from '../spec';

const COLOURS: readonly BandColour[] = [
  'black',
  'brown',
  'red',
  'orange',
  'yellow',
  'green',
  'blue',
  'violet',
  'grey',
  'white',
  'gold',
  'silver',
  'pink',
];
/** Other spellings that are read. */
const SPELLINGS: Readonly<Record<string, BandColour>> = { gray: 'grey', purple: 'violet' };

export const bands: CommandSpec = {
  name: 'bands',
  summary: "Tells a resistor's coloured bands from its value, or its value from the bands.",
  places: { words: 'VALUE | COLOUR ...', least: 1, most: 6 },
  options: [
    { name: 'tolerance', value: { words: 'PERCENT' }, about: 'of the resistor; 5% without it' },
    formatOption(['text', 'json']),
    OUTPUT,
  ],
  about: [
    `Colours: ${COLOURS.join(', ')}. Three to six of them, read from the end where they stand closer; 20% without a tolerance band. A single black one is a link.`,
    'Source: IEC 60062 (2016), from memory.',
  ],
  exits: [
    [0, 'it was told'],
    [2, 'the value has no bands, the bands have no value, or a colour is none'],
  ],
  examples: [
    ['bands 4k7', 'yellow, violet, red, gold'],
    ['bands 4.7k --tolerance 1%', 'yellow, violet, black, brown, brown'],
    ['bands orange orange brown gold', '330 ohm, 5 %'],
  ],
  async run(given, here) {
    const said = readColours(given.places) ?? readValue(given);
    const { ohms, tolerance, perKelvin } = said;
    const codes = [letterCode(ohms, 'ohm'), digitCode(ohms, 'ohm')].filter((code) => code !== undefined);
    const series = SERIES_NAMES.find((name) => isPreferred(ohms, name));
    if (optionOf(given, 'format') === 'json') {
      deliver(
        `${JSON.stringify({ format: 1, ...said, codes, series: series ?? null }, undefined, 2)}\n`,
        given,
        here,
      );
      return 0;
    }
    const value = `${formatQuantity(ohms, 'ohm', 4)}${tolerance === 0 ? '' : `, ${formatTolerance(tolerance)}`}`;
    const lines = [
      value,
      `bands: ${said.bands.join(', ')}`,
      ...(perKelvin === undefined ? [] : [`${perKelvin} millionths per kelvin`]),
      ...(codes.length === 0 ? [] : [`printed: ${codes.join(' or ')}`]),
      ohms === 0 ? 'a link' : series === undefined ? 'in no series of preferred values' : `in ${series}`,
      '',
    ];
    deliver(lines.join('\n'), given, here);
    return 0;
  },
};

interface Said {
  readonly ohms: number;
  /** Relative. */
  readonly tolerance: number;
  readonly perKelvin?: number;
  readonly bands: readonly BandColour[];
}

/** Undefined where the words begin with no colour. */
function readColours(words: readonly string[]): Said | undefined {
  const names = words.flatMap((word) => word.split(/[\s,]+/)).filter((word) => word !== '');
  const [first = ''] = names;
  if (/\d/.test(first)) {
    return undefined;
  }
  const colours = names.map((name) => {
    const small = name.toLowerCase();
    const colour =
      COLOURS.find((known) => known === small) ??
      (Object.hasOwn(SPELLINGS, small) ? SPELLINGS[small] : undefined);
    if (colour === undefined) {
      const near = nearest(small, COLOURS);
      throw new Refusal(
        `"${name}" is no colour of a band. ${near === undefined ? `Possible: ${COLOURS.join(', ')}.` : `Did you mean ${near}?`}`,
      );
    }
    return colour;
  });
  const banded = readBands(colours);
  if (banded === undefined) {
    throw new Refusal(
      `The bands ${colours.join(', ')} say nothing in this order. Try them from the other end.`,
    );
  }
  return { ...banded, bands: colours };
}

function readValue(given: Given): Said {
  const ohms = parseQuantity(given.places.join(' '), 'ohm');
  const tolerance = parseTolerance(optionOf(given, 'tolerance') ?? '5%');
  if (!ohms.ok || !tolerance.ok) {
    throw new Refusal(`Not a value: ${ohms.ok ? (tolerance.ok ? '' : tolerance.why) : ohms.why}.`);
  }
  const coded = bandsFor(ohms.value, tolerance.value);
  if (!coded.ok) {
    throw new Refusal(`${formatQuantity(ohms.value, 'ohm', 6)}: ${coded.why}.`);
  }
  return { ohms: ohms.value, tolerance: tolerance.value, bands: coded.bands };
}
