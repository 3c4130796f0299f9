/**
 * Sums that others have done: examples out of data sheets, application notes, standards and textbooks, each with where
 * it stands. The figures are theirs, as printed; how near ours must come is what their rounding leaves.
 */
import { describe, expect, test } from 'vitest';
import { exactly } from '../../../server/src/base/range';
import {
  buildResistance,
  chargeTime,
  dischargeTime,
  dividedVolts,
  explainDivider,
  quickOhms,
  regulatorBudget,
  runTime,
  sizeBaseResistor,
  sizeDivider,
  sizePowerRating,
  sizePull,
  sizeSeriesResistor,
  valuesBetween,
  wireDrop,
} from '../../../server/src/circuit';
import { resistor, solve, source } from './elements';
import {
  fixedBias,
  fourResistors,
  hambley,
  jaeger,
  knott,
  kuphaldt,
  millman,
  nChannel,
  neamen,
  pChannel,
  sadiku,
  zener,
} from './worked-circuits';

const e12 = valuesBetween('E12', 1, 1e6);
const e24 = valuesBetween('E24', 1, 1e6);

/** The sizing that must have succeeded. */
function good<T extends { readonly ok: boolean }>(sized: T): Extract<T, { ok: true }> {
  if (!sized.ok) throw new Error(JSON.stringify(sized));
  return sized as Extract<T, { ok: true }>;
}

/** What came out, what the source prints, and by how much they may differ (relative). */
type Row = readonly [where: string, ours: () => number, theirs: number, share: number];

const slva689 = 'Texas Instruments SLVA689, I2C bus pullup resistor calculation, section 4';
const pull = () =>
  good(
    sizePull({
      supply: 3.3,
      moverVolts: 0.4,
      moverAmps: 0.003,
      edge: { farads: 200e-12, seconds: 300e-9 },
      stock: e24,
      tolerance: 0.05,
    }),
  );

const toshiba = 'Toshiba, Basics of low-dropout regulators, 4.2, 600 mW at 25 degC means 208.3 K/W';
const toshibaRegulator = () =>
  good(
    regulatorBudget({
      input: exactly(3.6),
      output: exactly(1.8),
      amps: exactly(0.1),
      kelvinPerWatt: (150 - 25) / 0.6,
      ambient: 40,
      maxJunction: 150,
    }),
  );
const telcom = 'TelCom TC1071 data sheet, thermal considerations';
const telcomRegulator = () =>
  good(
    regulatorBudget({
      input: exactly(3.3),
      output: exactly(2.7 * 0.995),
      amps: exactly(0.098),
      kelvinPerWatt: 220,
      ambient: 55,
      maxJunction: 125,
    }),
  );

const orient = 'Orient Display, How to estimate battery life, 2200 mAh';
const settles = 'Debounce time, settling of an RC network to 1 %, table of a guide';

const rows: readonly Row[] = [
  [`${kuphaldt}, Millman: 8 V`, () => millman().nodes.x?.typ ?? 0, 8, 1e-9],
  [`${kuphaldt}: 5 A out of B1`, () => millman().amps.b1?.typ ?? 0, 5, 1e-9],
  [`${kuphaldt}: 1 A into B2`, () => millman().amps.b3?.typ ?? 0, -1, 1e-9],
  [
    `${kuphaldt}, Norton: 14 A through a short`,
    () =>
      solve(source('b1', 'x', 'GND', 28, 4), source('b3', 'x', 'GND', 7, 1), resistor('k', 'x', 'GND', 0))
        .amps.k?.typ ?? 0,
    14,
    1e-4,
  ],
  [`${sadiku}: IB`, () => fixedBias().amps['q:control']?.typ ?? 0, 165e-6, 1e-3],
  [`${sadiku}: IC`, () => fixedBias().amps.q?.typ ?? 0, 8.25e-3, 1e-3],
  [`${sadiku}: vo`, () => fixedBias().nodes.c?.typ ?? 0, 5.175, 1e-3],
  [`${hambley}: IB at 100`, () => fourResistors(100).amps['q:control']?.typ ?? 0, 41.2e-6, 5e-3],
  [`${hambley}: IC at 100`, () => fourResistors(100).amps.q?.typ ?? 0, 4.12e-3, 5e-3],
  [`${hambley}: IC at 300`, () => fourResistors(300).amps.q?.typ ?? 0, 4.24e-3, 5e-3],
  [
    `${hambley}: VCE at 300`,
    () => (fourResistors(300).nodes.c?.typ ?? 0) - (fourResistors(300).nodes.e?.typ ?? 0),
    6.51,
    5e-3,
  ],
  [`${jaeger} (a): saturated, ID`, () => pChannel('d').amps.q?.typ ?? 0, -153e-6, 5e-3],
  [`${jaeger} (a): saturated, VDS`, () => pChannel('d').nodes.d?.typ ?? 0, -3.525, 5e-3],
  [`${jaeger} (b): triode, ID`, () => pChannel('n').amps.q?.typ ?? 0, -195e-6, 5e-3],
  [`${jaeger} (b): triode, VDS`, () => pChannel('n').nodes.d?.typ ?? 0, -0.347, 5e-3],
  [`${neamen}: saturated at 12 V`, () => nChannel(12).amps.q?.typ ?? 0, 0.045, 1e-6],
  [`${neamen}: at 0.8 V`, () => nChannel(0.8).amps.q?.typ ?? 0, 0.0208, 1e-6],
  [`${knott}: 10 mA through it`, () => -(zener(0.05).amps.z?.typ ?? 0), 0.01, 1e-3],
  [`${knott}: 60 mA unloaded`, () => -(zener(0).amps.z?.typ ?? 0), 0.06, 1e-3],
  [`${slva689}: least`, () => pull().least.value, 966.667, 1e-5],
  [`${slva689}: most`, () => pull().most.value, 1770, 1e-3],
  [
    'NXP UM10204, 7.1: 0.8473 RC from 0.3 to 0.7 of the supply',
    () => chargeTime(1, 1, 1, 0.7).value - chargeTime(1, 1, 1, 0.3).value,
    0.8473,
    1e-4,
  ],
  [`${toshiba}: junction`, () => toshibaRegulator().junction.value, 77.5, 1e-6],
  [`${telcom}: 60 mW`, () => telcomRegulator().heat.value, 0.06, 5e-3],
  [`${telcom}: 318 mW allowed`, () => telcomRegulator().heatAmps.value * (3.3 - 2.7 * 0.995), 0.318, 2e-3],
  [
    `${orient}: 55 hours at 40 mA`,
    () => good(runTime({ ampHours: 2.2, phases: [{ amps: 0.04, seconds: 1 }] })).hours,
    55,
    1e-9,
  ],
  [
    `${orient}: 8.08 mA and 272.3 hours with 2 s of 40 mA and 8 s of 0.1 mA`,
    () =>
      good(
        runTime({
          ampHours: 2.2,
          phases: [
            { amps: 0.04, seconds: 2 },
            { amps: 0.0001, seconds: 8 },
          ],
        }),
      ).hours,
    272.3,
    1e-3,
  ],
  [
    'Electrical Engineering Stack Exchange, average consumption: 1.9 mAh an hour',
    () =>
      good(
        runTime({
          ampHours: 2,
          phases: [
            { amps: 0.05e-3, seconds: 3473 },
            { amps: 56e-3, seconds: 120 },
            { amps: 0.44e-3, seconds: 6 },
          ],
        }),
      ).meanAmps.value,
    1.9e-3,
    0.02,
  ],
  [
    'IEEE Region 3 newsletter 18/2, brain teaser (hand sum): 200 ohm into 15 pF up to 4 V of 5 V',
    () => chargeTime(200, 15e-12, 5, 4).value,
    200 * 15e-12 * Math.log(5),
    1e-12,
  ],
  [
    'homework of a physics forum, 22 March 2013: 20 kohm, 100 uF, 18 V of 40 V',
    () => chargeTime(20e3, 1e-4, 40, 18).value,
    1.2,
    5e-3,
  ],
  [
    'Serway and Vuille, College Physics, 18.34: 12 kohm, 46.5 uF, 10 V of 12 V after 1 s',
    () => chargeTime(12e3, 46.5e-6, 12, 10).value,
    1,
    2e-3,
  ],
  [`${settles}: 10 kohm, 100 nF`, () => dischargeTime(1e4, 1e-7, 1, 0.01).value, 4.605e-3, 1e-4],
  [`${settles}: 22 kohm, 220 nF`, () => dischargeTime(22e3, 220e-9, 1, 0.01).value, 22.3e-3, 1e-3],
  [`${settles}: 4.7 kohm, 10 nF`, () => dischargeTime(4700, 1e-8, 1, 0.01).value, 0.216e-3, 3e-3],
  [
    'Electrical Engineering Stack Exchange, relay from 3.3 V: 1350 ohm',
    () =>
      good(
        sizeBaseResistor({
          driveVolts: 3.3,
          loadAmps: 0.1,
          gain: 100,
          room: 2,
          baseVolts: 0.6,
          limitAmps: 0.01,
          stock: e12,
          tolerance: 0.05,
        }),
      ).sum.value,
    1350,
    1e-9,
  ],
  [
    'Horowitz and Hill, The Art of Electronics, forced gain of ten (from memory): 3.3 V and 100 mA ask for 260 ohm, 240 ohm of E24',
    () =>
      good(sizeBaseResistor({ driveVolts: 3.3, loadAmps: 0.1, limitAmps: 0.02, stock: e24, tolerance: 0.05 }))
        .ohms,
    240,
    1e-9,
  ],
  ['Wikipedia, LED circuit, example 1: 12 V, 1.8 V, 5 mA', () => quickOhms(12 - 1.8, 0.005), 2040, 1e-9],
  ['Wikipedia, LED circuit, example 1: 9 V, 1.8 V, 5 mA', () => quickOhms(9 - 1.8, 0.005), 1440, 1e-9],
  [
    'BeagleBone for Secret Agents, reference: 3.3 V, 2.2 V, 20 mA ask for 55 ohm, and 56 ohm is sold',
    () =>
      good(
        sizeSeriesResistor({
          supply: exactly(3.3),
          forward: exactly(2.2),
          sourceOhms: exactly(0),
          limitAmps: 0.02,
          stock: e12,
          tolerance: 0,
        }),
      ).ohms,
    56,
    1e-9,
  ],
  ['Wilson, Systems and Control: 6 V, 3 V, 20 mA', () => quickOhms(6 - 3, 0.02), 150, 1e-9],
  [
    'Wilson, Systems and Control: a quarter of a watt is adequate',
    () => good(sizePowerRating({ amps: 0.02, ohms: 150 })).watts,
    0.06,
    1e-9,
  ],
  [
    'level shift with E12 values (hand sum): 5 V by 1.8 kohm and 3.3 kohm',
    () => dividedVolts(5, 1800, 3300),
    3.235,
    1e-4,
  ],
  [
    'level shift in a tutorial on level converters: 5 V by 10 kohm and 20 kohm',
    () => dividedVolts(5, 1e4, 2e4),
    3.333,
    2e-4,
  ],
  [
    'Electrodragon, notes on voltage dividers: 18 V by 36 kohm and 13 kohm',
    () => dividedVolts(18, 36e3, 13e3),
    4.77,
    2e-3,
  ],
  [
    'Electrodragon, notes on voltage dividers: 18 V by 51 kohm and 13 kohm',
    () => dividedVolts(18, 51e3, 13e3),
    3.65,
    3e-3,
  ],
  [
    'NBS Handbook 100 copper wire tables (from memory): 1.588 ohm per 1000 ft of gauge 12, 10 A, 50 ft',
    () => good(wireDrop({ thickness: { awg: 12 }, metres: 50 * 0.3048, amps: 10 })).volts.value,
    1.588,
    1e-3,
  ],
];

describe('worked examples', () => {
  test.each(rows)('%s', (_, ours, theirs, share) => {
    expect(Math.abs(ours() - theirs)).toBeLessThanOrEqual(share * Math.abs(theirs));
  });

  test('a divider for 3.3 V out of 5 V keeps below it with 5 % parts, and shows its sum', () => {
    const divider = good(
      sizeDivider({ input: exactly(5), wanted: 3.3, atLeast: 2, stock: e12, tolerance: 0.05 }),
    );
    expect(divider.output.max).toBeLessThanOrEqual(3.3);
    expect(divider.output.min).toBeGreaterThan(2.9);
    expect(explainDivider(5, 1000, 2000).text).toBe('5.0 V \u00d7 2 kohm / (1 kohm + 2 kohm) = 3.3 V');
  });

  test('what E12 lacks is built of two: 290 ohm of 1 kohm and 390 ohm, or of 270 ohm and 22 ohm', () => {
    const built = good(buildResistance(290, valuesBetween('E12', 100, 1e4), 0.02));
    expect(Math.abs(built.error)).toBeLessThan(0.02);
    expect(built.values.length).toBe(2);
    expect(built.sum.text).toMatch(/ = /);
  });
});
