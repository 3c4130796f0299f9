/**
 * A board file of the library beside the answer of the open AVR core: every difference in words, by topic. The test
 * demands none; the printed summary counts them.
 */
import type { BoardFile } from '../../../server/src/hardware/generated/board';
import type { CoreAnswer } from './avr-core';

type Pin = NonNullable<NonNullable<BoardFile['pins']>[string]>;

export const CORE_TOPICS = [
  'ports',
  'timers',
  'channels',
  'interrupts',
  'numbers',
  'buses',
  'serial ports',
  'names',
  'macros',
] as const;
export type CoreTopic = (typeof CORE_TOPICS)[number];

const BUSES = {
  SDA: 'i2c.sda',
  SCL: 'i2c.scl',
  MOSI: 'spi.mosi',
  MISO: 'spi.miso',
  SCK: 'spi.sck',
  SS: 'spi.ss',
} as const;

/** @param board The file with all that it extends laid under it. */
export function compareWithCore(board: BoardFile, core: CoreAnswer): Readonly<Record<CoreTopic, string[]>> {
  const pins = Object.entries(board.pins ?? {}).flatMap(([name, pin]) =>
    pin === null ? [] : [{ name, pin }],
  );
  /** By its number, or by a second number the core has for it, which stands among its names. */
  const pinOf = (number: number): Pin | undefined =>
    pins.find(({ pin }) => pin.number === number)?.pin ??
    pins.find(({ pin }) => pin.names?.includes(String(number)))?.pin;
  const known = new Set(core.pins.map(({ number }) => number));
  const names = board.platform?.names ?? {};
  const macros = board.platform?.macros ?? {};
  return {
    ports: core.pins.flatMap(({ number, port }) => told(`pin ${number}: port`, pinOf(number)?.port, port)),
    timers: [
      ...differ('PWM', pins.flatMap(timersOf), core.pins.flatMap(coreTimerOf)),
      ...pins.flatMap(({ name, pin }) => {
        const channels = channelRoles(pin);
        return told(`${name}: pwm`, pin.pwm ?? undefined, channels[0]?.slice(0, 6));
      }),
      // The core's own two tables must agree, or neither could be followed.
      ...core.pins.flatMap(({ number, timer, hasPwm }) =>
        told(`pin ${number}: digitalPinHasPWM`, timer !== undefined, hasPwm),
      ),
    ],
    channels: [
      ...core.channels.flatMap((channel, index) => {
        const number = names[`A${index}`];
        return told(
          `A${index}: channel`,
          typeof number === 'number' ? pinOf(number)?.adc : undefined,
          channel,
        );
      }),
      ...differ(
        'converter channel',
        pins.flatMap(({ pin }) => pin.adc ?? []),
        core.channels,
      ),
    ],
    interrupts: differ(
      'interrupt',
      pins.flatMap(({ pin }) => (pin.interrupt == null ? [] : [`pin ${pin.number} line ${pin.interrupt}`])),
      core.pins.flatMap(({ number, interrupt }) =>
        interrupt === undefined ? [] : [`pin ${number} line ${interrupt}`],
      ),
    ),
    numbers: pins.flatMap(({ name, pin }) =>
      typeof pin.number === 'number' && !known.has(pin.number) && pin.type !== 'analog-input'
        ? [`${name}: the core counts no pin ${pin.number}`]
        : [],
    ),
    buses: Object.entries(BUSES).flatMap(([name, role]) => {
      const bearers = pins.filter(({ pin }) => pin.roles?.includes(role)).map(({ pin }) => pin.number);
      return told(role, bearers.join(' and '), String(core.names[name]));
    }),
    'serial ports': core.serialPorts.flatMap(({ number, role }) =>
      pinOf(number)?.roles?.includes(role) ? [] : [`pin ${number}: ${role} is missing`],
    ),
    names: Object.entries(names).flatMap(([name, value]) => told(name, value, core.names[name])),
    macros: [
      ...Object.entries(macros).flatMap(([name, text]) => told(name, text, core.macros.get(name))),
      ...told('bits of an int', board.platform?.intBits, 8 * Number(core.macros.get('__SIZEOF_INT__'))),
    ],
  };
}

function channelRoles(pin: Pin): string[] {
  return pin.roles?.filter((role) => /^timer\d\.[abcd]$/.test(role)) ?? [];
}

function timersOf({ pin }: { readonly pin: Pin }): string[] {
  return channelRoles(pin).map((timer) => `pin ${pin.number} ${timer}`);
}

function coreTimerOf({ number, timer }: CoreAnswer['pins'][number]): string[] {
  return timer === undefined ? [] : [`pin ${number} ${timer}`];
}

function told(what: string, ours: unknown, theirs: unknown): string[] {
  return ours === theirs ? [] : [`${what} is ${String(ours)} here and ${String(theirs)} in the core`];
}

/** What only one of two lists has. */
function differ<T extends string | number>(what: string, ours: readonly T[], theirs: readonly T[]): string[] {
  return [
    ...ours.filter((one) => !theirs.includes(one)).map((one) => `${what}: ${one} only here`),
    ...theirs.filter((one) => !ours.includes(one)).map((one) => `${what}: ${one} only in the core`),
    ...ours.filter((one, index) => ours.indexOf(one) !== index).map((one) => `${what}: ${one} twice here`),
  ];
}
