/**
 * What every sizing promises, on random wishes: the choice keeps its limits at every corner, a refusal says why, nothing
 * is NaN, and the sum that is shown is the sum that was done.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { within } from '../../../server/src/base/range';
import {
  buildResistance,
  chooseFlybackDiode,
  dividedVolts,
  regulatorBudget,
  runTime,
  sizeBaseResistor,
  sizeDelay,
  sizeDivider,
  sizeGateResistor,
  sizePowerRating,
  sizePull,
  sizeSeriesResistor,
  sizeSeriesResistors,
  valuesBetween,
} from '../../../server/src/circuit';
import { diode, resistor, solve, source } from './elements';
import { isSound, number, spread } from './outcome';

const stock = fc.constantFrom(
  valuesBetween('E3', 10, 1e6),
  valuesBetween('E12', 10, 1e6),
  valuesBetween('E24', 1, 1e7),
  [330],
  [220, 330, 470, 1000, 10_000],
);
const tolerance = fc.constantFrom(0, 0.01, 0.05, 0.2);
const odd = [Number.NaN, Number.POSITIVE_INFINITY, -1, 0, 1, 1e-300, 1e300];

describe('series resistors', () => {
  const wish = fc.record({
    supply: number(2, 24).map((value) => within(value, 0.05)),
    forward: number(0, 3.5).map((value) => within(value, 0.1)),
    sourceOhms: number(0, 60).map((value) => within(value, 0.3)),
    wantedAmps: spread(-3.5, -1.5),
    limitAmps: spread(-2.5, -1.3),
    atAmps: fc.constant(0.02),
    watts: fc.constantFrom(0.125, 0.25, 2),
    stock,
    tolerance,
  });

  test('one or two: safe at the worst corner, never farther from the wish than one alone', () => {
    fc.assert(
      fc.property(wish, (wanted) => {
        const two = sizeSeriesResistors(wanted);
        const one = sizeSeriesResistor(wanted);
        isSound(two);
        if (one.ok) expect(two.ok).toBe(true);
        if (!two.ok) return;
        expect(two.amps.max).toBeLessThanOrEqual(wanted.limitAmps);
        expect(two.amps.min <= two.amps.typ && two.amps.typ <= two.amps.max).toBe(true);
        for (const value of two.values) expect(wanted.stock).toContain(value);
        for (const watts of two.watts) expect(watts).toBeLessThanOrEqual(wanted.watts);
        if (one.ok) {
          const off = (amps: number): number => Math.abs(amps - wanted.wantedAmps);
          expect(off(two.amps.typ)).toBeLessThanOrEqual(off(one.amps.typ) * (1 + 1e-9));
        }
      }),
      { numRuns: 300 },
    );
  });

  test('less flows through more ohms, and more from more volts', () => {
    const lamp = (ohms: number, supply: number): number =>
      solve(source('s', 'p', 'GND', supply, 10), resistor('r', 'p', 'x', ohms), diode('d', 'x', 'GND', 2))
        .amps.d?.typ ?? Number.NaN;
    fc.assert(
      fc.property(spread(1, 5), number(1.01, 10), number(2.5, 20), (ohms, factor, supply) => {
        expect(lamp(ohms * factor, supply)).toBeLessThan(lamp(ohms, supply));
        expect(lamp(ohms, supply * factor)).toBeGreaterThan(lamp(ohms, supply));
      }),
    );
  });
});

describe('one or two out of a drawer', () => {
  test('never worse than the nearest single value, and shown as what it is', () => {
    fc.assert(
      fc.property(spread(1.5, 5.5), stock, (ohms, values) => {
        const built = buildResistance(ohms, values, 0);
        isSound(built);
        if (!built.ok) return;
        const off = (value: number): number => Math.abs(Math.log(value / ohms));
        expect(off(built.ohms)).toBeLessThanOrEqual(Math.min(...values.map(off)) + 1e-12);
        const [a = 0, b] = built.values;
        const made = b === undefined ? a : built.join === 'series' ? a + b : (a * b) / (a + b);
        expect(built.ohms).toBeCloseTo(made, 6);
        expect(built.sum.value).toBeCloseTo(made, 6);
      }),
    );
  });
});

describe('pulls, dividers, drives and delays', () => {
  test('a pull lies between its limits with its tolerance', () => {
    fc.assert(
      fc.property(
        number(1.8, 12),
        spread(-3.5, -1.5),
        spread(-8, -5),
        stock,
        tolerance,
        (supply, moverAmps, leakageAmps, values, within) => {
          const wanted = {
            supply,
            moverAmps,
            leakageAmps,
            lossVolts: supply * 0.3,
            stock: values,
            tolerance: within,
          };
          const pull = sizePull(wanted);
          isSound(pull);
          if (!pull.ok) return;
          expect(supply / (pull.ohms * (1 - within))).toBeLessThanOrEqual(moverAmps * (1 + 1e-9));
          expect(leakageAmps * pull.ohms * (1 + within)).toBeLessThanOrEqual(supply * 0.3 * (1 + 1e-9));
        },
      ),
    );
  });

  test('a divider keeps below its limit at every corner, and its volts scale with its input', () => {
    fc.assert(
      fc.property(number(3, 30), number(0.1, 0.9), tolerance, (volts, share, within) => {
        const wanted = volts * share;
        const input = { min: volts * 0.9, typ: volts * 0.95, max: volts };
        const divider = sizeDivider({
          input,
          wanted,
          stock: valuesBetween('E12', 100, 1e5),
          tolerance: within,
        });
        isSound(divider);
        if (!divider.ok) return;
        const { top, bottom, output } = divider;
        expect(dividedVolts(volts, top * (1 - within), bottom * (1 + within))).toBeLessThanOrEqual(
          wanted * (1 + 1e-9),
        );
        expect(output.min <= output.typ && output.typ <= output.max).toBe(true);
        expect(dividedVolts(2 * volts, top, bottom)).toBeCloseTo(2 * dividedVolts(volts, top, bottom), 9);
      }),
      { numRuns: 60 },
    );
  });

  test('a base resistor saturates at its largest and spares the pin at its smallest', () => {
    fc.assert(
      fc.property(
        number(1.5, 6),
        spread(-3, -0.5),
        number(20, 400),
        stock,
        tolerance,
        (volts, load, gain, values, within) => {
          const drive = sizeBaseResistor({
            driveVolts: volts,
            driveOhms: 30,
            loadAmps: load,
            gain,
            limitAmps: 0.02,
            stock: values,
            tolerance: within,
          });
          isSound(drive);
          if (!drive.ok) return;
          expect((volts - 0.7) / (drive.ohms * (1 + within) + 30)).toBeGreaterThanOrEqual(
            ((2 * load) / gain) * (1 - 1e-9),
          );
          expect((volts - 0.7) / (drive.ohms * (1 - within) + 30)).toBeLessThanOrEqual(0.02);
        },
      ),
    );
  });

  test('a gate resistor keeps the surge within the pin, a delay is never short', () => {
    fc.assert(
      fc.property(
        number(1.8, 12),
        spread(-9.5, -7.5),
        stock,
        tolerance,
        spread(-3, 0),
        (volts, farads, values, within, seconds) => {
          const gate = sizeGateResistor({
            driveVolts: volts,
            driveOhms: 25,
            limitAmps: 0.02,
            gateFarads: farads,
            stock: values,
            tolerance: within,
          });
          isSound(gate);
          if (gate.ok) expect(gate.pinAmps).toBeLessThanOrEqual(0.02 * (1 + 1e-9));
          for (const edge of ['rise', 'fall'] as const) {
            const delay = sizeDelay({
              supply: volts,
              threshold: volts * 0.4,
              edge,
              seconds,
              farads: 1e-5,
              stock: values,
              tolerance: within,
            });
            isSound(delay);
            if (delay.ok) expect(delay.sums[1]?.value ?? 0).toBeGreaterThanOrEqual(seconds * (1 - 1e-6));
          }
        },
      ),
    );
  });
});

/** Every three of the odd figures. */
function* triples(): Generator<readonly [number, number, number]> {
  for (const a of odd) for (const b of odd) for (const c of odd) yield [a, b, c];
}

describe('odd figures', () => {
  test('never come out as NaN and are refused in words', () => {
    for (const [a, b, c] of triples()) {
      const values = [100, 1000, 1e4];
      for (const outcome of [
        sizePull({ supply: a, moverAmps: b, leakageAmps: c, lossVolts: a, stock: values, tolerance: 0.05 }),
        sizeDivider({ input: within(a, 0), wanted: b, loadOhms: c, stock: values, tolerance: 0.05 }),
        sizeBaseResistor({
          driveVolts: a,
          loadAmps: b,
          gain: c,
          limitAmps: 0.02,
          stock: values,
          tolerance: 0,
        }),
        sizeGateResistor({ driveVolts: a, limitAmps: b, gateFarads: c, stock: values, tolerance: 0 }),
        sizeDelay({
          supply: a,
          threshold: b,
          edge: 'rise',
          seconds: c,
          farads: 1e-6,
          stock: values,
          tolerance: 0,
        }),
        sizePowerRating({ amps: a, ohms: b, room: c }),
        chooseFlybackDiode({ supply: a, coilOhms: b, henries: c }),
        buildResistance(a, [b, c]),
        runTime({ ampHours: a, phases: [{ amps: b, seconds: c }] }),
        regulatorBudget({
          input: within(a, 0),
          output: within(b, 0),
          amps: within(c, 0),
          kelvinPerWatt: 50,
          ambient: 25,
          maxJunction: 125,
        }),
      ]) {
        isSound(outcome);
      }
    }
  });
});
