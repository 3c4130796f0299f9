/** One board for a person at a terminal: pins with what they can, headers to count along, limits with their sources. */
import type { Board, BoardPin, Sourced } from '../../base/build';
import { formatRange, type Unit } from '../../base/quantity';
import { wrap } from '../help';
import { harmless } from './excerpt';

/** The text on a board. */
export function printBoard(board: Board): string {
  const lines = [
    `${board.id}: ${board.title}, ${board.chip}`,
    '',
    'Pins',
    ...columns(
      board.pins.map((pin) => [
        pin.id,
        pin.number === undefined ? '' : String(pin.number),
        abilitiesOf(pin, board),
      ]),
    ),
    '',
    'Headers',
    ...board.headers.flatMap(({ title, landmark, positions }) => [
      `  ${title}, counted from ${landmark}`,
      ...wrap(positions.map((pin, at) => `${at + 1}\u00a0${pin}`).join(', '), '    ').map((line) =>
        line.replaceAll('\u00a0', ' '),
      ),
    ]),
    '',
    'Limits',
    ...limitsOf(board).flatMap(([what, figure, source]) => [
      `  ${what}: ${figure}`,
      ...wrap(source, '      '),
    ]),
    ...(board.onBoard.length === 0 ? [] : ['', 'On the board']),
    ...board.onBoard.flatMap((part) => [
      `  ${part.title}${part.lamp === undefined ? '' : ` on ${part.lamp.pin}, lit ${part.lamp.litBy === 'data' ? 'by data' : `when ${part.lamp.litBy}`}`}`,
      ...wrap(part.source, '      '),
    ]),
    '',
  ];
  return lines.map(harmless).join('\n');
}

function columns(rows: readonly (readonly [string, string, string])[]): readonly string[] {
  const [first, second] = [0, 1].map((at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  return rows.map(([id, number, said]) =>
    `  ${id.padEnd(first ?? 0)}  ${number.padStart(second ?? 0)}  ${said}`.trimEnd(),
  );
}

/** What a pin can and may not, in a fixed order. */
function abilitiesOf(pin: BoardPin, board: Board): string {
  const said: string[] = [];
  if (pin.type !== 'io') {
    said.push(pin.type.replaceAll('-', ' '));
  }
  if (pin.volts !== undefined) {
    said.push(formatRange(pin.volts, 'V'));
  }
  if (pin.maxAmps !== undefined) {
    said.push(`gives ${formatRange(pin.maxAmps, 'A')}`);
  }
  if (pin.port !== undefined) {
    said.push(pin.port);
  }
  if (pin.pwm !== undefined) {
    said.push(`PWM (${pin.pwm})`);
  }
  if (pin.adc !== undefined) {
    said.push(`analog ${pin.adc}`);
  }
  if (pin.interrupt !== undefined) {
    said.push(`interrupt ${pin.interrupt}`);
  }
  if (pin.inputOnly === true) {
    said.push('input only');
  }
  if (pin.pulls !== undefined) {
    said.push(pin.pulls.length === 0 ? 'no pulls' : `pulls ${pin.pulls.join(' and ')}`);
  }
  said.push(...pin.roles);
  if (pin.boot !== undefined) {
    said.push(`${pin.boot.must ? 'must be' : 'should be'} ${pin.boot.level} at reset`);
  }
  if (pin.takenBy !== undefined) {
    said.push(`${pin.takenBy.free ? 'shared with' : 'taken by'} ${pin.takenBy.what}`);
  }
  const others = pin.names.filter((name) => name !== pin.id && name !== String(pin.number));
  if (others.length > 0) {
    said.push(`also ${others.join(', ')}`);
  }
  if (board.reset?.pin === pin.id) {
    said.push(`held up by ${formatRange(board.reset.pullUpOhms, 'ohm')}`);
  }
  return said.join('; ');
}

function limitsOf({
  limits,
  analog,
  supplyInputs = [],
}: Board): readonly (readonly [string, string, string])[] {
  const row = (what: string, figure: Sourced | undefined, unit: Unit) =>
    figure === undefined ? [] : [[what, formatRange(figure, unit), figure.source] as const];
  return [
    ...row('current of one pin, recommended', limits.pinRecommended, 'A'),
    ...row('current of one pin, absolute', limits.pinAbsolute, 'A'),
    ...limits.groups.flatMap((group) => row(`sum of ${group.title} (${group.direction})`, group.amps, 'A')),
    ...row('sum of all pins', limits.total, 'A'),
    ...row('resistance of an output, high', limits.outputHighOhms, 'ohm'),
    ...row('resistance of an output, low', limits.outputLowOhms, 'ohm'),
    ...row('read as low up to', limits.inputLowVolts, 'V'),
    ...row('read as high from', limits.inputHighVolts, 'V'),
    ...row('pull-up of the chip', limits.pullUpOhms, 'ohm'),
    ...row('pull-down of the chip', limits.pullDownOhms, 'ohm'),
    ...row('voltage on a pin, at most', limits.pinMaxVolts, 'V'),
    ...row('current into a protection diode', limits.clampAmps, 'A'),
    ...row('analogRead measures', analog?.volts, 'V'),
    ...row('source of analogRead, at most', analog?.sourceOhms, 'ohm'),
    ...supplyInputs.flatMap((input) => [
      ...row(`supply at ${input.title}`, input.volts, 'V'),
      ...row(`supply at ${input.title}, absolute`, input.absoluteVolts, 'V'),
      ...row(`current into ${input.title}`, input.maxAmps, 'A'),
    ]),
  ];
}
