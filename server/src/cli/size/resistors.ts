/** Sizings that end in one resistor: in series with a lamp, on a line, before a base, beside a capacitor. */
import type { Board } from '../../base/build';
import { formatQuantity, formatRange } from '../../base/quantity';
import { exactly, type Range } from '../../base/range';
import {
  type SeriesWish,
  sizeBaseResistor,
  sizeDelay,
  sizePull,
  sizeSeriesResistor,
  sizeSeriesResistors,
} from '../../circuit';
import { type Answer, resistorWords, type Sizer } from './answer';
import type { Figures } from './figures';

/** Volts of the rail that feeds the board's pins. */
function railOf(board: Board): Range | undefined {
  return board.pins.find(({ id }) => id === board.logicRail)?.volts;
}

export const SERIES: Sizer = {
  what: 'series',
  about: 'the series resistor of a lamp',
  options: [
    'supply',
    'forward',
    'at',
    'current',
    'limit',
    'source-ohms',
    'power',
    'pair',
    'stock',
    'tolerance',
    'board',
  ],
  size(figures) {
    const { stock, tolerance } = figures;
    const [at, wanted, watts] = [
      figures.may('at', 'A'),
      figures.may('current', 'A'),
      figures.may('power', 'W'),
    ];
    const wish: SeriesWish = {
      supply: figures.range('supply', 'V', railOf),
      forward: figures.range('forward', 'V'),
      sourceOhms: sourceOhms(figures),
      limitAmps: figures.need('limit', 'A', (board) => board.limits.pinRecommended.typ),
      stock,
      tolerance,
      ...(at === undefined ? {} : { atAmps: at }),
      ...(wanted === undefined ? {} : { wantedAmps: wanted }),
      ...(watts === undefined ? {} : { watts }),
    };
    return figures.has('pair') ? sizePair(wish) : sizeOne(wish);
  },
};

function sizeOne(wish: SeriesWish): Answer {
  const sized = sizeSeriesResistor(wish);
  if (!sized.ok) {
    return sized;
  }
  const { ohms, amps, watts, sum } = sized;
  return {
    ok: true,
    take: resistorWords(ohms, wish.tolerance),
    lines: seriesLines(amps, wish, `power in the resistor: ${formatQuantity(watts, 'W')} at the worst`),
    figures: { ohms, amps, watts },
    sums: [{ value: sized.quick.constantDrop, unit: 'A', text: sum }],
  };
}

function sizePair(wish: SeriesWish): Answer {
  const sized = sizeSeriesResistors(wish);
  if (!sized.ok) {
    return sized;
  }
  const { ohms, join, values, amps, watts, sums } = sized;
  const each = values.map((value) => resistorWords(value, wish.tolerance));
  const power = watts.map((value) => formatQuantity(value, 'W')).join(' and ');
  return {
    ok: true,
    take: join === 'single' ? (each[0] ?? '') : `${each.join(' and ')}, in ${join}`,
    lines: seriesLines(
      amps,
      wish,
      `power in ${join === 'single' ? 'the resistor' : 'the two'}: ${power} at the worst`,
    ),
    figures: { ohms, join, values, amps, watts },
    sums,
  };
}

function seriesLines(amps: Range, wish: SeriesWish, power: string): readonly string[] {
  return [
    `current: ${formatRange(amps, 'A')} (least / usual / most); ${formatQuantity(wish.limitAmps, 'A')} may flow`,
    power,
  ];
}

function sourceOhms(figures: Figures): Range {
  return figures.has('source-ohms') || figures.board === undefined
    ? exactly(figures.may('source-ohms', 'ohm') ?? 0)
    : figures.range('source-ohms', 'ohm', (board) => board.limits.outputHighOhms);
}

export const PULL_UP: Sizer = {
  what: 'pull-up',
  about: 'the resistor that holds a line at its rest level; a pull-down alike',
  options: [
    'supply',
    'current',
    'low',
    'leakage',
    'loss',
    'capacitance',
    'time',
    'stock',
    'tolerance',
    'board',
  ],
  size(figures) {
    const { stock, tolerance } = figures;
    const [low, leakage, loss] = [
      figures.may('low', 'V'),
      figures.may('leakage', 'A'),
      figures.may('loss', 'V'),
    ];
    const edge = figures.has('capacitance') || figures.has('time');
    const sized = sizePull({
      supply: figures.range('supply', 'V', railOf).max,
      moverAmps: figures.need('current', 'A', (board) => board.limits.pinRecommended.typ),
      ...(low === undefined ? {} : { moverVolts: low }),
      ...(leakage === undefined ? {} : { leakageAmps: leakage }),
      ...(loss === undefined ? {} : { lossVolts: loss }),
      ...(edge
        ? { edge: { farads: figures.need('capacitance', 'F'), seconds: figures.need('time', 's') } }
        : {}),
      stock,
      tolerance,
    });
    if (!sized.ok) {
      return sized;
    }
    const { ohms, least, most, sums } = sized;
    const to = Number.isFinite(most.value) ? ` to ${formatQuantity(most.value, 'ohm')}` : ' upwards';
    return {
      ok: true,
      take: resistorWords(ohms, tolerance),
      lines: [`what works: ${formatQuantity(least.value, 'ohm')}${to}`],
      figures: { ohms, leastOhms: least.value, mostOhms: Number.isFinite(most.value) ? most.value : null },
      sums,
    };
  },
};

export const BASE: Sizer = {
  what: 'base',
  about: 'the base resistor of a transistor that a pin switches',
  options: [
    'supply',
    'load',
    'gain',
    'room',
    'base-volts',
    'limit',
    'source-ohms',
    'stock',
    'tolerance',
    'board',
  ],
  size(figures) {
    const { stock, tolerance } = figures;
    const drive = figures.range('supply', 'V', railOf);
    const [gain, room, volts] = [
      figures.number('gain'),
      figures.number('room'),
      figures.may('base-volts', 'V'),
    ];
    const sized = sizeBaseResistor({
      driveVolts: drive.min,
      highestDriveVolts: drive.max,
      driveOhms: sourceOhms(figures).max,
      loadAmps: figures.need('load', 'A'),
      limitAmps: figures.need('limit', 'A', (board) => board.limits.pinRecommended.typ),
      ...(gain === undefined ? {} : { gain }),
      ...(room === undefined ? {} : { room }),
      ...(volts === undefined ? {} : { baseVolts: volts }),
      stock,
      tolerance,
    });
    return sized.ok
      ? {
          ok: true,
          take: resistorWords(sized.ohms, tolerance),
          lines: [`current out of the pin: ${formatQuantity(sized.pinAmps, 'A')} at the most`],
          figures: { ohms: sized.ohms, pinAmps: sized.pinAmps },
          sums: sized.sums,
        }
      : sized;
  },
};

export const RC: Sizer = {
  what: 'rc',
  about: 'the resistor that makes a delay with a capacitor',
  options: [
    'supply',
    'threshold',
    'edge',
    'time',
    'capacitance',
    'capacitor-tolerance',
    'most-ohms',
    'stock',
    'tolerance',
    'board',
  ],
  size(figures) {
    const { stock, tolerance } = figures;
    const [faradTolerance, mostOhms] = [
      figures.share('capacitor-tolerance'),
      figures.may('most-ohms', 'ohm'),
    ];
    const sized = sizeDelay({
      supply: figures.range('supply', 'V', railOf).typ,
      threshold: figures.need('threshold', 'V'),
      edge: figures.word('edge') === 'fall' ? 'fall' : 'rise',
      seconds: figures.need('time', 's'),
      farads: figures.need('capacitance', 'F'),
      ...(faradTolerance === undefined ? {} : { faradTolerance }),
      ...(mostOhms === undefined ? {} : { mostOhms }),
      stock,
      tolerance,
    });
    if (!sized.ok) {
      return sized;
    }
    const [, shortest] = sized.sums;
    return {
      ok: true,
      take: resistorWords(sized.ohms, tolerance),
      lines: [
        `delay: ${formatQuantity(sized.seconds, 's')}${shortest === undefined ? '' : `, ${formatQuantity(shortest.value, 's')} at the short end of all tolerances`}`,
      ],
      figures: { ohms: sized.ohms, seconds: sized.seconds, shortestSeconds: shortest?.value },
      sums: sized.sums,
    };
  },
};
