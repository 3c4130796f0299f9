/**
 * Whether a bus that a pin can serve is in use. The calls of bus libraries name no pins, so their pins count as used
 * as soon as the sketch speaks of the library.
 */
import type { Subject } from '../subject';

const libraryOfRole: readonly (readonly [RegExp, RegExp])[] = [
  [/^i2c/, /\bWire\d?\b/],
  [/^spi/, /\bSPI\d?\b/],
  [/^uart/, /\bSerial\d?\b/],
  [/^usb/, /\bSerial\b|\bKeyboard\b|\bMouse\b/],
];

/** True where the sketch names a port register: what it does to which pins is not followed. */
export function writesPorts(subject: Subject): boolean {
  return Object.entries(subject.texts).some(
    ([file, text]) => file !== subject.build.file && /\b(?:PORT|DDR|PIN)[A-L]\b/.test(text),
  );
}

/** True where the sketch speaks of a library that takes one of these roles. */
export function usesBus(subject: Subject, roles: readonly string[]): boolean {
  return libraryOfRole.some(
    ([role, library]) =>
      roles.some((name) => role.test(name)) &&
      Object.entries(subject.texts).some(([file, text]) => file !== subject.build.file && library.test(text)),
  );
}
