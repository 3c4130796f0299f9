/** Addresses of declared devices on an I2C bus. */
import type { Part } from '../../base/build';
import type { Subject } from '../subject';

/** The address a part is declared with, `0x3C` or `60`; undefined where none is, or no such number. */
export function addressOf(part: Part): number | undefined {
  const text = part.parameters.address?.trim() ?? '';
  if (!/^(0x[0-9a-f]{1,2}|\d{1,3})$/i.test(text)) return undefined;
  const address = Number(text);
  return address <= 0x7f ? address : undefined;
}

/** Parts that sit on a bus of two wires. */
export function busParts(subject: Subject): readonly Part[] {
  return subject.build.parts.filter((part) =>
    part.terminals.some((terminal) => terminal.roles?.includes('i2c.sda')),
  );
}
