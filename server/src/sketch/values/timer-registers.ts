/**
 * Registers by which a timer takes pins for itself: the compare output bits of TCCRnA (ATmega328P data sheet, section
 * 16.11; names and places of the bits as in the chip headers of avr-libc, iom328p.h, iom2560.h, iom32u4.h). What level
 * such a pin has is up to the timer.
 */
import type { CallFacts } from '../../base/platform';
import type { Machine } from './machine';
import { spanAt } from './model';
import { outcome } from './outcomes';
import { driveByTimer } from './pin-states';
import type { RegisterWrite } from './register-writes';
import { known, type Register, unknown } from './value';

const facts: CallFacts = { name: 'register', action: 'pwm' };

/** The channel of each bit, the lowest first. */
const channels: Readonly<Record<string, string>> = { A: '  ccbbaa', C: '  ddbbaa' };

/** The pin of each bit that connects a timer's output; undefined for a register that has none on this board. */
export function timerPins(machine: Machine, name: string): readonly (number | undefined)[] | undefined {
  const [, timer, letter = ''] = /^TCCR(\d)([AC])$/.exec(name) ?? [];
  const { roles } = machine.platform;
  // Only the fast timer of the 32U4 connects outputs by its third register.
  if (timer === undefined || (letter === 'C' && roles[`timer${timer}.d`] === undefined)) return undefined;
  const pins = [...(channels[letter] ?? '')].map((channel) => roles[`timer${timer}.${channel}`]);
  return pins.some((pin) => pin !== undefined) ? pins : undefined;
}

const modeBits: Readonly<Record<string, number>> = { 0: 0, 1: 1, 2: 3, 3: 4 };
const outputBits: Readonly<Record<string, number>> = { A: 6, B: 4, C: 2, D: 2 };

/** `COM1A0`, `WGM12`, `CS10`: bits of a timer's registers by their number. */
export function timerBit(name: string): number | undefined {
  const [, channel = '', which] = /^COM\d([A-D])([01])S?$/.exec(name) ?? [];
  if (which !== undefined) return (outputBits[channel] ?? 0) + Number(which);
  const [, mode] = /^WGM\d([0-3])$/.exec(name) ?? [];
  if (mode !== undefined) return modeBits[mode];
  const [, clock] = /^CS\d([0-3])$/.exec(name) ?? [];
  return clock === undefined ? undefined : Number(clock);
}

/** Tells what a write to such a register connects. */
export function meetTimer(
  machine: Machine,
  register: Register,
  after: readonly number[],
  write: RegisterWrite,
): void {
  const { one, flip } = outcome;
  const found = new Map<number, boolean>();
  for (const [bit, pin] of register.pins.entries()) {
    const effect = after[bit] ?? 0;
    if (pin === undefined || (effect & (one | flip)) === 0) continue;
    found.set(pin, found.get(pin) === true || effect === one);
  }
  const before = machine.certain;
  for (const [pin, isSure] of found) {
    machine.certain = before && isSure;
    driveByTimer(machine, pin);
    const level = unknown(`a timer drives it by \`${register.name}\``, spanAt(machine.site, write.place));
    if (!machine.use(write.node, facts, known(pin, machine.types.int), level)) continue;
    machine.describe({
      call: register.name,
      span: spanAt(machine.site, write.target),
      callSpan: spanAt(machine.site, write.place),
      valueSpan: spanAt(machine.site, write.value),
    });
  }
  machine.certain = before;
}
