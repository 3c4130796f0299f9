/** Wire by colour, sleeving, solder and tools: what is used up or needed besides the parts. */
import type { Build, Wire } from '../base/build';
import { formatQuantity, formatTolerance } from '../base/quantity';
import { needsSleeve } from './hookup-list';
import { countWords, gaugeOf, gaugeWords, stripOf } from './words';

/** Share bought on top where the manifest says nothing (common practice). */
export const USUAL_SLACK = 0.2;

/** Metres of sleeving on one joint of a leg and a wire (common practice). */
const SLEEVE = 0.015;

/** Solder that a joint of hookup wire takes, metres of 1 mm wire (common practice). */
const SOLDER = 0.01;

export interface WireSum {
  readonly colour: string;
  readonly gauge: string;
  readonly pieces: number;
  /** Metres of those whose length is said, without slack. */
  readonly metres: number;
  /** Pieces without a length. */
  readonly unknown: number;
}

/** Sums by colour and gauge, in the order of their first wire. */
export function sumWires(build: Build): readonly WireSum[] {
  const groups = new Map<string, Wire[]>();
  for (const wire of build.wires) {
    const gauge = gaugeOf(build, wire);
    const key = JSON.stringify([wire.colour ?? '', gauge ? gaugeWords(gauge) : '']);
    groups.set(key, [...(groups.get(key) ?? []), wire]);
  }
  return [...groups].map(([key, wires]) => {
    const [colour = '', gauge = ''] = JSON.parse(key) as string[];
    // In tenths of a millimetre, so that many small lengths add up to what a ruler shows.
    const tenths = wires.reduce((sum, { length = 0 }) => sum + Math.round(length * 1e4), 0);
    const unknown = wires.filter(({ length }) => length === undefined).length;
    return { colour, gauge, pieces: wires.length, metres: tenths / 1e4, unknown };
  });
}

export function slackOf(build: Build): number {
  return build.wire?.slack ?? USUAL_SLACK;
}

/** "1.9 m" for the metres with slack, rounded up to the next centimetre. */
export function lengthToBuy(build: Build, metres: number): string {
  return formatQuantity(Math.ceil(metres * (1 + slackOf(build)) * 100 - 1e-9) / 100, 'm');
}

/** Lines with a box: name, how much, and why that much. */
export function listConsumables(
  build: Build,
): readonly { readonly item: string; readonly amount: string; readonly why: string }[] {
  const joints = new Set<string>();
  const sleeved = new Set<string>();
  for (const wire of build.wires) {
    for (const end of wire.ends) {
      const name =
        end.kind === 'pin' ? `${end.pin} ${end.position?.words ?? ''}` : `${end.part}.${end.terminal}`;
      joints.add(name);
      if (needsSleeve(build, end)) sleeved.add(name);
    }
  }
  const solder = formatQuantity(Math.ceil(joints.size * SOLDER * 10) / 10, 'm');
  const strips = [...new Set(build.wires.map((wire) => stripOf(build, wire)))].sort((a, b) => a - b);
  return [
    {
      item: 'solder, 1 mm, with flux core',
      amount: solder,
      why: `${countWords(joints.size, 'joint')}, about 1 cm each (common practice)`,
    },
    ...(sleeved.size > 0
      ? [
          {
            item: 'heat-shrink sleeving, 2:1, about twice as wide as the wire over its insulation',
            amount: formatQuantity(sleeved.size * SLEEVE, 'm'),
            why: `${countWords(sleeved.size, 'piece')} of ${formatQuantity(SLEEVE, 'm')}`,
          },
        ]
      : []),
    {
      item: 'soldering iron with stand, wet sponge or brass wool',
      amount: '',
      why: '330 to 370 degC for hookup wire (common practice)',
    },
    {
      item: 'wire stripper and side cutter',
      amount: '',
      why: `to strip ${strips.map((metres) => formatQuantity(metres, 'm')).join(' and ')}`,
    },
    { item: 'multimeter with continuity, resistance and diode range', amount: '', why: 'for the test sheet' },
    ...(sleeved.size > 0 ? [{ item: 'hot-air gun', amount: '', why: 'shrinks the sleeving' }] : []),
  ];
}

/** "with 20 % slack". */
export function slackWords(build: Build): string {
  const own = build.wire?.slack !== undefined ? '' : ' (common practice)';
  return `with ${formatTolerance(slackOf(build))} slack${own}`;
}
