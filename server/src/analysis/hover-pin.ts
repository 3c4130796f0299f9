/** What hangs on a pin, in Markdown: the run of wires, the sums, the limits, and where the pin is on the board. */
import type { PinUse } from '../base/pin-use';
import { formatQuantity } from '../base/quantity';
import { worst } from '../base/range';
import { explainSeries, quickAmps } from '../circuit';
import { ordinal } from '../hardware';
import type { PinView, Region, StatePoint, Subject } from '../rules/subject';
import { limitsOf, type PinLimit } from '../rules/support/pin-limits';
import { traceRuns } from './runs';
import { ampsWords, plain, runWords } from './words';

/** Several paragraphs on one pin. */
export function describePin(subject: Subject, view: PinView): string {
  const { build } = subject;
  const { pin } = view;
  const lines = [headLine(view)];
  const runs = traceRuns(build, pin.id);
  for (const run of runs) lines.push(runWords(build, pin.id, run));
  if (runs.length === 0) {
    const own = build.board.onBoard
      .filter((part) => view.onBoard.includes(part.id))
      .map((part) => part.title);
    lines.push(own.length > 0 ? `On the board itself: ${plain(own.join(', '))}.` : 'Nothing is wired to it.');
  }
  lines.push(...currentLines(subject, view));
  lines.push(placeLine(subject, view));
  return lines.filter((line) => line !== '').join('\n\n');
}

function headLine({ pin }: PinView): string {
  const can = [
    pin.pwm && `PWM (${pin.pwm})`,
    pin.adc !== undefined && `analog input ${pin.adc}`,
    pin.interrupt !== undefined && `interrupt ${pin.interrupt}`,
    ...pin.roles,
  ].filter((word): word is string => typeof word === 'string');
  const number = pin.number === undefined ? '' : `, number ${pin.number}`;
  const port = pin.port ? `, ${pin.port}` : '';
  return `**${plain(pin.id)}**${plain(number + port)}${can.length > 0 ? ` · ${plain(can.join(', '))}` : ''}`;
}

function placeLine({ build }: Subject, view: PinView): string {
  for (const wire of view.wires) {
    for (const end of wire.ends) {
      if (end.kind === 'pin' && end.pin === view.pin.id && end.position)
        return `Where: ${plain(end.position.words)}.`;
    }
  }
  const places = build.board.headers.flatMap((header) =>
    header.positions.flatMap((id, index) =>
      id === view.pin.id ? [`${header.title}, ${ordinal(index + 1)} from ${header.landmark}`] : [],
    ),
  );
  return places.length > 0 ? `Where: ${plain(`${view.pin.id}, ${places.join('; or ')}`)}.` : '';
}

/** The state in which most flows, against the limits; then the quick sum that anybody would do by head. */
function currentLines(subject: Subject, view: PinView): string[] {
  const region = subject.regions.find((candidate) => candidate.pins.includes(view.pin.id));
  if (!region) return [];
  const id = `pin:${view.pin.id}`;
  let most: StatePoint | undefined;
  for (const state of subject.points(region)) {
    const amps = state.point.amps[id];
    if (amps && (!most || worst(amps) > worst(most.point.amps[id] ?? amps))) most = state;
  }
  const amps = most?.point.amps[id];
  if (!most || !amps || view.pin.number === undefined || worst(amps) < 1e-6)
    return voltLines(subject, view, region);
  const { working, absolute } = limitsOf(subject.build, view);
  const lines = [
    `Current: ${plain(ampsWords(amps))}, ${plain(most.words)}. Limits of the pin: ` +
      `${plain(formatQuantity(working.amps, 'A'))} ${workingWord(subject, working)}, ` +
      `${plain(formatQuantity(absolute.amps, 'A'))} absolute.`,
  ];
  const sum = quickSum(subject, view);
  if (sum) lines.push(sum);
  if (region.limit !== undefined) lines.push(plain(region.limit));
  return lines;
}

/** A policy's figure is no recommendation of the maker. */
function workingWord({ build }: Subject, { amps }: PinLimit): string {
  return build.policy.kind === 'figure' && amps === build.policy.pinAmps ? 'by policy' : 'recommended';
}

/** What a pin that drives nothing sees in each state, and at what level the chip reads it or resets. */
function voltLines(subject: Subject, view: PinView, region: Region): string[] {
  const seen = subject.points(region).flatMap((state) => {
    const volts = state.point.nodes[view.net.id];
    return volts && state.words ? [`${formatQuantity(volts.typ, 'V')} with ${state.words}`] : [];
  });
  if (seen.length === 0) return [];
  const shown = seen.slice(0, 4).join('; ');
  const rest = seen.length > 4 ? `; and ${seen.length - 4} more states` : '';
  const { board } = subject.build;
  const level =
    board.reset?.pin === view.pin.id
      ? ` Below ${formatQuantity(board.reset.assertVolts.max, 'V')} the chip is in reset.`
      : view.pin.number !== undefined && !view.uses.some((use) => use.action === 'analog-read')
        ? ` Read as low up to ${formatQuantity(board.limits.inputLowVolts.typ, 'V')}, as high from ` +
          `${formatQuantity(board.limits.inputHighVolts.typ, 'V')}.`
        : '';
  return [plain(`Voltage: ${shown}${rest}.${level}`)];
}

/** The sum by head for a run of resistors and lamps between the pin and a rail: the lamp's drop neglected, then not. */
function quickSum(subject: Subject, view: PinView): string | undefined {
  const { build } = subject;
  const supply = build.board.pins.find((pin) => pin.id === build.board.logicRail)?.volts?.typ;
  if (supply === undefined) return undefined;
  for (const run of traceRuns(build, view.pin.id)) {
    if (!run.reachesRail) continue;
    let ohms = 0;
    let drop = 0;
    let simple = true;
    for (const { part, to, leave } of run.hops) {
      if (!part || to.kind !== 'terminal') continue;
      const passed = part.inside.filter(
        (primitive) => leave !== undefined && leave !== to.terminal && primitive.ends.includes(leave),
      );
      for (const primitive of passed) {
        if (primitive.type === 'resistor') ohms += primitive.ohms.typ;
        else if (primitive.type === 'diode') drop += primitive.volts.typ;
        else simple = false;
      }
    }
    if (!simple || ohms === 0 || drop === 0 || drop >= supply) continue;
    const neglected = formatQuantity(quickAmps(supply, ohms), 'A', 2);
    return (
      `Quick sum: ${plain(formatQuantity(supply, 'V', 2))} / ${plain(formatQuantity(ohms, 'ohm'))} = ` +
      `${plain(neglected)} with the lamp’s drop neglected; with it ` +
      `${plain(explainSeries({ supply, forward: drop, ohms, sourceOhms: 0 }))}. The figure above also counts the ` +
      `pin’s own resistance and the tolerances.`
    );
  }
  return undefined;
}

/** How the sketch comes to a pin: "7, from `beacon`, line 3". */
export function describeUse(use: PinUse): string {
  if (use.pins.kind === 'unknown')
    return `Which pin this is could not be found out: ${plain(use.pins.reason)}.`;
  return use.how === undefined ? '' : codeWords(use.how);
}

/** Text whose names stand between backticks: those stay code, all else is shown as it is. */
function codeWords(text: string): string {
  return text
    .split('`')
    .map((piece, index) => (index % 2 === 1 ? `\`${piece}\`` : plain(piece)))
    .join('');
}
