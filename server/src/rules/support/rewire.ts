/** A part moved to another pin: its wire in the manifest and the number in the sketch, in one fix. */
import { numbersOf } from '../../base/build';
import type { Fix } from '../../base/finding';
import type { PinUse } from '../../base/pin-use';
import type { Edit, Span } from '../../base/span';
import type { PinView, Subject } from '../subject';
import { usesBus } from './buses';
import { draftManifest, type Step } from './draft';
import { setEnd } from './manifest-edits';
import { partOf, viewOf } from './views';

/** A pin as one writes it in this board's sketches: by its name where the core has it with that number. */
export function writtenPin(subject: Subject, view: PinView): string {
  const { id, number } = view.pin;
  return subject.build.board.platform.names[id] === number ? id : `${number}`;
}

/**
 * Pins that nothing is wired to, that the sketch leaves alone, and that nothing on the board and no bus needs; those
 * that no bus can ever want first.
 */
export function freePins(subject: Subject, wanted: (view: PinView) => boolean): readonly PinView[] {
  const onHeader = new Set(subject.build.board.headers.flatMap((header) => header.positions));
  const free = subject.pins.filter(
    (view) =>
      view.pin.number !== undefined &&
      view.wires.length === 0 &&
      view.uses.length === 0 &&
      view.onBoard.length === 0 &&
      view.pin.takenBy === undefined &&
      view.pin.boot === undefined &&
      onHeader.has(view.pin.id) &&
      !usesBus(subject, view.pin.roles) &&
      !view.pin.roles.some((role) => /^(uart0|usb|jtag|swd)\b/.test(role)) &&
      wanted(view),
  );
  const wish = (view: PinView) => (view.pin.roles.some((role) => /^(uart|i2c|spi)\d*\./.test(role)) ? 1 : 0);
  return free.sort((a, b) => wish(a) - wish(b));
}

/** The wires of a pin as steps that end them on another one; a declared position is given up. */
export function moveWires(subject: Subject, from: PinView, to: string): readonly Step[] {
  return subject.build.wires.flatMap((wire) =>
    ([0, 1] as const).flatMap((index) => {
      const end = wire.ends[index];
      return end.kind === 'pin' && end.pin === from.pin.id ? [setEnd(wire, index, to)] : [];
    }),
  );
}

/**
 * Gives the pin another number in the sketch. Undefined where one of its uses does not get the number from a plain
 * literal or from one constant.
 */
export function renumber(subject: Subject, from: PinView, to: string): readonly Edit[] | undefined {
  const edits = new Map<string, Edit>();
  for (const use of from.uses) {
    if (namesNoPin(subject, use)) continue;
    const place = literalOf(subject, from, use);
    if (!place) return undefined;
    edits.set(`${place.file}:${place.start}`, { ...place, text: to });
  }
  return edits.size > 0 ? [...edits.values()] : undefined;
}

/** A call whose pins were given before, to the constructor or to another call: its place is its own name. */
function namesNoPin(subject: Subject, use: PinUse): boolean {
  const written = textOf(subject, use.span);
  return use.call === written || use.call.endsWith(`.${written}`);
}

/** The place of the number behind a use. */
function literalOf(subject: Subject, view: PinView, use: PinUse): Span | undefined {
  if (use.pins.kind !== 'known' || use.pins.values.length !== 1) return undefined;
  const known = subject.build.board.platform.names;
  const numbers = numbersOf(view.pin);
  const means = (word: string) => /^\w+$/.test(word) && numbers.includes(known[word] ?? Number(word));
  const written = textOf(subject, use.span);
  if (means(written) && use.lines === undefined) return use.span;
  const [origin, ...others] = use.origins;
  if (origin === undefined || others.length > 0) return undefined;
  const behind = (subject.texts[origin.file] ?? '').slice(origin.end);
  const found = /^(\s*=\s*|\s*\{\s*|[ \t]+)(\w+)/.exec(behind);
  const [, gap = '', word = ''] = found ?? [];
  if (!means(word)) return undefined;
  const start = origin.end + gap.length;
  return { file: origin.file, start, end: start + word.length };
}

function textOf(subject: Subject, span: Span): string {
  return (subject.texts[span.file] ?? '').slice(span.start, span.end);
}

/** True where a pin can do all that the sketch does with another. */
function serves({ uses, modes }: PinView, { pin }: PinView): boolean {
  const asks = (action: PinUse['action']) => uses.some((use) => use.action === action);
  if (asks('pwm') && pin.pwm === undefined) return false;
  if (asks('analog-read') && pin.adc === undefined) return false;
  if (asks('interrupt') && pin.interrupt === undefined) return false;
  if (modes.includes('output') && (pin.inputOnly === true || pin.type !== 'io')) return false;
  const pulls = pin.pulls ?? (pin.type === 'io' ? ['up', 'down'] : []);
  return !(modes.includes('input-pullup') && !pulls.includes('up'));
}

/** True where a part hangs there whose place is a bus, so that it cannot go to any other pin. */
function isOnBus(subject: Subject, view: PinView): boolean {
  return view.net.terminals.some(({ part, terminal }) =>
    partOf(subject, part)
      ?.terminals.find((one) => one.id === terminal)
      ?.roles?.some((role) => /^(i2c|spi)\./.test(role)),
  );
}

/** Moves the part of a pin to a free pin: wire and number. Undefined where one of both cannot be done. */
function movePart(subject: Subject, pin: string, to: string): Fix | undefined {
  const from = viewOf(subject, pin);
  const target = viewOf(subject, to);
  if (!from || !target || from.wires.length !== 1 || isOnBus(subject, from)) return undefined;
  if (!serves(from, target)) return undefined;
  const numbers = renumber(subject, from, writtenPin(subject, target));
  if (!numbers) return undefined;
  return {
    title: `Move what hangs on ${pin} to ${to}, in the wiring and in the sketch`,
    trust: 'ask',
    edits: [...draftManifest(subject, moveWires(subject, from, to)), ...numbers],
  };
}

/** Moves to the first two of the free pins: the likeliest ways out, and not a list of all. */
export function moveFixes(subject: Subject, pin: string, free: readonly string[]): readonly Fix[] {
  const fixes = free.slice(0, 8).flatMap((to) => movePart(subject, pin, to) ?? []);
  return fixes.slice(0, 2);
}
