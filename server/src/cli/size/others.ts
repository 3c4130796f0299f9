/** Sizings that end in two resistors or in none: a divider, and what a wire takes. */
import { formatQuantity, formatRange } from '../../base/quantity';
import { gaugeMillimetres, sizeDivider, squareMillimetresOf, type Thickness, wireDrop } from '../../circuit';
import { Refusal } from '../spec';
import { resistorWords, type Sizer } from './answer';
import type { Figures } from './figures';

export const DIVIDER: Sizer = {
  what: 'divider',
  about: 'the two resistors that make a smaller voltage out of a larger one',
  options: ['input', 'wanted', 'at-most', 'at-least', 'load', 'current', 'source-ohms', 'stock', 'tolerance'],
  size(figures) {
    const { stock, tolerance } = figures;
    const optional = {
      atMost: figures.may('at-most', 'V'),
      atLeast: figures.may('at-least', 'V'),
      loadOhms: figures.may('load', 'ohm'),
      maxAmps: figures.may('current', 'A'),
      maxSourceOhms: figures.may('source-ohms', 'ohm'),
    };
    const sized = sizeDivider({
      input: figures.range('input', 'V'),
      wanted: figures.need('wanted', 'V'),
      ...(Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined)) as Partial<
        Record<keyof typeof optional, number>
      >),
      stock,
      tolerance,
    });
    if (!sized.ok) {
      return sized;
    }
    const { top, bottom, output, sums } = sized;
    return {
      ok: true,
      take: `${resistorWords(top, tolerance)} from the input to the output, ${resistorWords(bottom, tolerance)} from there to the return`,
      lines: [`output: ${formatRange(output, 'V')} (least / usual / most)`],
      figures: { topOhms: top, bottomOhms: bottom, volts: output },
      sums,
    };
  },
};

export const WIRE: Sizer = {
  what: 'wire',
  about: 'what a wire takes of the voltage',
  options: ['gauge', 'area', 'length', 'current', 'supply', 'one-way', 'degrees'],
  size(figures) {
    const thickness = readThickness(figures);
    const [degrees, supply] = [figures.number('degrees'), figures.may('supply', 'V')];
    const sized = wireDrop({
      thickness,
      metres: figures.need('length', 'm'),
      amps: figures.need('current', 'A'),
      thereAndBack: !figures.has('one-way'),
      ...(degrees === undefined ? {} : { degrees }),
      ...(supply === undefined ? {} : { supply }),
    });
    if (!sized.ok) {
      return sized;
    }
    const { ohms, volts, watts, share, sums } = sized;
    const lost = share === undefined ? '' : `, ${Number((share * 100).toPrecision(2))} % of the supply`;
    return {
      ok: true,
      take: `${formatQuantity(volts.value, 'V')} lost${lost}`,
      lines: [
        `wire: ${thicknessWords(thickness)}${figures.has('one-way') ? '' : ', there and back'}`,
        `resistance: ${formatQuantity(ohms.value, 'ohm')}`,
        `heat: ${formatQuantity(watts, 'W')}`,
      ],
      figures: { volts: volts.value, ohms: ohms.value, watts, ...(share === undefined ? {} : { share }) },
      sums,
    };
  },
};

function readThickness(figures: Figures): Thickness {
  const [awg, area] = [figures.number('gauge'), figures.number('area')];
  if ((awg === undefined) === (area === undefined)) {
    throw new Refusal('Say the thickness of the wire: --gauge or --area, one of them.');
  }
  return area === undefined ? { awg: awg ?? 0 } : { squareMillimetres: area };
}

function thicknessWords(thickness: Thickness): string {
  const square = Number((squareMillimetresOf(thickness) ?? 0).toPrecision(3));
  if (!('awg' in thickness)) {
    return `${square} mm²`;
  }
  return `gauge ${thickness.awg}, ${Number((gaugeMillimetres(thickness.awg) ?? 0).toPrecision(3))} mm, ${square} mm²`;
}
