/**
 * Asks the real AVR compiler and the real headers of the open AVR core what a board's names, ports, timers and lines
 * are. The core's tables are compiled as they stand; the answer is read out of the object file, so no header is
 * copied, stubbed or parsed here.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Where Debian's package arduino-core-avr puts the core. */
export const CORE = process.env.WIRETRUE_AVR_CORE ?? '/usr/share/arduino/hardware/arduino/avr';
/** More than any target here has; a table entry beyond the core's own count is never looked at. */
const MOST_PINS = 80;

/** The port macros of the core, and its timer channels; both are the same for all chips. */
const PORTS = ['PA', 'PB', 'PC', 'PD', 'PE', 'PF', 'PG', 'PH', 'PJ', 'PK', 'PL'];
const TIMERS = [
  ...['0a', '0b', '1a', '1b', '1c', '2', '2a', '2b', '3a', '3b', '3c'],
  ...['4a', '4b', '4c', '4d', '5a', '5b', '5c'],
];

/** One build target of the core, in the words of its boards.txt. */
export interface Target {
  readonly mcu: string;
  readonly variant: string;
  readonly fCpu: string;
  readonly board: string;
}

export interface CorePin {
  readonly number: number;
  /** `PD7`. */
  readonly port: string;
  /** `timer2.b`; absent: not on a timer. */
  readonly timer?: string;
  readonly hasPwm: boolean;
  /** External interrupt line, absent where there is none. */
  readonly interrupt?: number;
}

export interface CoreAnswer {
  readonly pins: readonly CorePin[];
  /** Converter channels of A0, A1 ... in order. */
  readonly channels: readonly number[];
  /** Values of the names that were asked for. */
  readonly names: Readonly<Record<string, number>>;
  /** Serial ports by the remarks in the variant's header, for its tables do not hold them. */
  readonly serialPorts: readonly { readonly number: number; readonly role: string }[];
  /** All object-like macros that are defined behind the core's main header. */
  readonly macros: ReadonlyMap<string, string>;
}

/** True where compiler, binary tools and core are all installed. */
export function avrCorePresent(): boolean {
  if (!existsSync(join(CORE, 'variants/standard/pins_arduino.h'))) {
    return false;
  }
  return ['avr-g++', 'avr-nm', 'avr-objcopy'].every((tool) => {
    try {
      execFileSync(tool, ['--version'], { stdio: 'ignore' });
      return true;
    } catch {
      return false;
    }
  });
}

/**
 * The target of a board in the core's boards.txt: `uno`, `leonardo`; `cpu` chooses from its menu of chips.
 * @throws Error where boards.txt lacks one of its settings.
 */
export function readTarget(key: string, cpu?: string): Target {
  const text = readFileSync(join(CORE, 'boards.txt'), 'utf8');
  const setting = (name: string): string => {
    const prefixes = cpu === undefined ? [key] : [`${key}.menu.cpu.${cpu}`, key];
    for (const prefix of prefixes) {
      const line = text.split(/\r?\n/).find((candidate) => candidate.startsWith(`${prefix}.${name}=`));
      if (line !== undefined) {
        return line.slice(line.indexOf('=') + 1).trim();
      }
    }
    throw new Error(`boards.txt has no ${name} for ${key}`);
  };
  return {
    mcu: setting('build.mcu'),
    variant: setting('build.variant'),
    fCpu: setting('build.f_cpu'),
    board: setting('build.board'),
  };
}

/** Compiles the core's tables for a target and reads them; `names` are evaluated as C++ integer constants. */
export function askCore(target: Target, names: readonly string[]): CoreAnswer {
  const folder = mkdtempSync(join(tmpdir(), 'board-oracle-'));
  try {
    const source = join(folder, 'tables.cpp');
    writeFileSync(source, makeSource(names));
    const flags = [
      ...[`-mmcu=${target.mcu}`, `-DF_CPU=${target.fCpu}`, '-DARDUINO=10819', `-DARDUINO_${target.board}`],
      ...['-DARDUINO_ARCH_AVR', '-std=gnu++11', '-Os', '-fno-exceptions', '-w'],
      ...['-I', join(CORE, 'cores/arduino'), '-I', join(CORE, 'variants', target.variant)],
      // The core passes these with every native-USB board; the headers do not compile without.
      ...['-DUSB_VID=0x2341', '-DUSB_PID=0x8036'],
    ];
    const object = join(folder, 'tables.o');
    execFileSync('avr-g++', [...flags, '-c', source, '-o', object]);
    const tables = readTables(object, join(folder, 'tables.bin'));
    const defined = execFileSync('avr-g++', [...flags, '-dM', '-E', source], { encoding: 'utf8' });
    return {
      ...makeAnswer(tables, names, readMacros(defined)),
      serialPorts: readSerialPorts(target.variant),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function makeSource(names: readonly string[]): string {
  const everyPin = (macro: string): string =>
    Array.from({ length: MOST_PINS }, (_, pin) => `(int32_t)(${macro}(${pin}))`).join(',\n');
  const table = (name: string, content: string): string =>
    `extern const int32_t wt_${name}[] PROGMEM;\nconst int32_t wt_${name}[] PROGMEM = {\n${content}\n};\n`;
  return [
    '#define ARDUINO_MAIN',
    '#include <Arduino.h>',
    table('count', 'NUM_DIGITAL_PINS, NUM_ANALOG_INPUTS'),
    table('ports', PORTS.join(', ')),
    table('timers', TIMERS.map((timer) => `TIMER${timer.toUpperCase()}`).join(', ')),
    table('interrupts', everyPin('digitalPinToInterrupt')),
    table('pwm', everyPin('digitalPinHasPWM')),
    names.length > 0 ? table('names', names.map((name) => `(int32_t)(${name})`).join(',\n')) : '',
  ].join('\n');
}

type Tables = (name: string, bytesEach: 1 | 4) => number[];

/** Reads arrays in program memory by their symbols: place and size from the symbol table, bytes from the section. */
function readTables(object: string, binary: string): Tables {
  execFileSync('avr-objcopy', ['-O', 'binary', '-j', '.progmem.data', object, binary]);
  const bytes = readFileSync(binary);
  const symbols = new Map<string, { start: number; size: number }>();
  for (const line of execFileSync('avr-nm', ['-S', object], { encoding: 'utf8' }).split('\n')) {
    const found = /^([0-9a-f]+) ([0-9a-f]+) \w (\w+)$/.exec(line);
    if (found?.[1] !== undefined && found[2] !== undefined && found[3] !== undefined) {
      symbols.set(found[3], { start: Number.parseInt(found[1], 16), size: Number.parseInt(found[2], 16) });
    }
  }
  return (name, bytesEach) => {
    const symbol = symbols.get(name);
    if (symbol === undefined) {
      return [];
    }
    return Array.from({ length: symbol.size / bytesEach }, (_, index) =>
      bytesEach === 1 ? bytes.readUInt8(symbol.start + index) : bytes.readInt32LE(symbol.start + 4 * index),
    );
  };
}

function makeAnswer(
  tables: Tables,
  names: readonly string[],
  macros: ReadonlyMap<string, string>,
): Omit<CoreAnswer, 'serialPorts'> {
  const [pinCount = 0, analogCount = 0] = tables('wt_count', 4);
  const portNumbers = tables('wt_ports', 4);
  const timerNumbers = tables('wt_timers', 4);
  const ports = tables('digital_pin_to_port_PGM', 1);
  const masks = tables('digital_pin_to_bit_mask_PGM', 1);
  const timers = tables('digital_pin_to_timer_PGM', 1);
  const interrupts = tables('wt_interrupts', 4);
  const pwm = tables('wt_pwm', 4);
  const pins = Array.from({ length: pinCount }, (_, number): CorePin => {
    const timer = TIMERS[timerNumbers.indexOf(timers[number] ?? 0)];
    const interrupt = interrupts[number] ?? -1;
    return {
      number,
      port: `${PORTS[portNumbers.indexOf(ports[number] ?? -1)] ?? '?'}${Math.log2(masks[number] ?? 0)}`,
      ...(timer === undefined ? {} : { timer: `timer${timer.slice(0, 1)}.${timer.slice(1)}` }),
      hasPwm: pwm[number] === 1,
      ...(interrupt >= 0 ? { interrupt } : {}),
    };
  });
  const mapped = tables('analog_pin_to_channel_PGM', 1);
  const channels = mapped.length > 0 ? mapped : Array.from({ length: analogCount }, (_, index) => index);
  const values = tables('wt_names', 4);
  return {
    pins,
    channels,
    names: Object.fromEntries(names.map((name, index) => [name, values[index] ?? Number.NaN])),
    macros,
  };
}

function readMacros(text: string): Map<string, string> {
  const macros = new Map<string, string>();
  for (const line of text.split('\n')) {
    const found = /^#define (\w+)(?: (.*))?$/.exec(line);
    if (found?.[1] !== undefined) {
      macros.set(found[1], found[2] ?? '');
    }
  }
  return macros;
}

/** `// PE 0 ** 0 ** USART0_RX` in one header, `// D0  PD2  RXD1/INT2` in another; none in the others. */
function readSerialPorts(variant: string): CoreAnswer['serialPorts'] {
  const text = readFileSync(join(CORE, 'variants', variant, 'pins_arduino.h'), 'utf8');
  const ports = new Map<string, { number: number; role: string }>();
  const patterns = [
    /\*\* (?<pin>\d+) \*\* USART(?<port>\d)_(?<way>[RT])X/g,
    /^\/\/ D(?<pin>\d+)\s.*\b(?<way>[RT])XD(?<port>\d)/gm,
  ];
  for (const pattern of patterns) {
    for (const { groups } of text.matchAll(pattern)) {
      const role = `uart${groups?.port}.${groups?.way?.toLowerCase()}x`;
      ports.set(role, { number: Number(groups?.pin), role });
    }
  }
  return [...ports.values()];
}
