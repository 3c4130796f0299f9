/** The files of a sketch to a firmware for one chip. What does not change between sketches is compiled once and kept. */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { joinSketch } from './prototypes';

const execute = promisify(execFile);
const CHIP = fileURLToPath(new URL('chip', import.meta.url));
const KEPT = fileURLToPath(new URL('../../../.test-output/firmware', import.meta.url));
const CORE = '/usr/share/arduino/hardware/arduino/avr';
const TOOLS = [
  '/usr/bin/avr-g++',
  '/usr/bin/gcc',
  '/usr/include/simavr/sim_avr.h',
  '/usr/include/libelf.h',
  join(CORE, 'cores/arduino/Arduino.h'),
];

/** The chip and what its core is told. */
export interface Target {
  readonly mcu: 'atmega328p' | 'atmega32u4' | 'atmega2560';
  /** Folder of pin tables in the core. */
  readonly variant: 'standard' | 'eightanaloginputs' | 'leonardo' | 'mega';
  /** Hertz. */
  readonly clock: number;
  /** The macro of the board, without its prefix: `AVR_NANO`. */
  readonly board: string;
}

export interface SketchFile {
  readonly name: string;
  readonly text: string;
}

export interface CompileOptions {
  /** `delay` lets the clock jump and spends only a few milliseconds itself. */
  readonly skipWaits?: boolean;
}

/** A firmware in a folder of its own. */
export interface Firmware {
  readonly elf: string;
  dispose(): void;
}

/** True where compiler, core and simulator are installed. */
export function firmwareToolsPresent(): boolean {
  return TOOLS.every((path) => existsSync(path));
}

/** The functions of the core that a sketch's calls are recorded of, by their names in object files. */
const RECORDED: readonly (readonly [string, string])[] = [
  ...['pinMode', 'digitalWrite', 'digitalRead', 'analogWrite', 'analogRead', 'attachInterrupt'],
  ...['pulseIn', 'pulseInLong', 'shiftOut', 'shiftIn'],
].map((name): readonly [string, string] => [name, `recorded_${name}`]);
const RENAMED: readonly (readonly [string, string])[] = [
  ...RECORDED,
  ['_Z4tonehjm', 'recorded_tone'],
  ['_Z6noToneh', 'recorded_noTone'],
  ['setup', 'sketch_setup'],
  ['loop', 'sketch_loop'],
];
const SKIPPED_WAIT: readonly [string, string] = ['delay', 'skipped_delay'];

/**
 * For the sketch's own files: line numbers, and none of the changes that would make a call seem to come from another
 * line than it was written in (a jump in place of the last call, one call in place of two equal ones).
 */
const PLACE_FLAGS = [
  '-gdwarf-2',
  '-fno-function-sections',
  '-fno-optimize-sibling-calls',
  '-fno-crossjumping',
  '-fno-tree-tail-merge',
  '-fno-ipa-icf',
];

function flagsOf(target: Target): readonly string[] {
  return [
    '-c',
    '-Os',
    '-w',
    '-ffunction-sections',
    '-fdata-sections',
    `-mmcu=${target.mcu}`,
    `-DF_CPU=${target.clock}L`,
    '-DARDUINO=10819',
    `-DARDUINO_${target.board}`,
    '-DARDUINO_ARCH_AVR',
    // Missing from avr-libc's float.h under the C++ standard the core asks for, and used by its Print class.
    '-DDECIMAL_DIG=17',
    // A native-USB core wants an identity to compile; this one is nobody's.
    '-DUSB_VID=0xffff',
    '-DUSB_PID=0xffff',
    '-DUSB_MANUFACTURER="oracle"',
    '-DUSB_PRODUCT="oracle"',
    `-I${join(CORE, 'cores/arduino')}`,
    `-I${join(CORE, 'variants', target.variant)}`,
    `-I${CHIP}`,
  ];
}

const CPP_FLAGS = ['-std=gnu++11', '-fpermissive', '-fno-exceptions', '-fno-threadsafe-statics'];

async function compileOne(source: string, object: string, flags: readonly string[]): Promise<void> {
  const kind = extname(source);
  const language =
    kind === '.cpp' ? CPP_FLAGS : kind === '.S' ? ['-x', 'assembler-with-cpp'] : ['-std=gnu11'];
  const compiler = kind === '.cpp' ? 'avr-g++' : 'avr-gcc';
  await execute(compiler, [...flags, ...language, source, '-o', object], { maxBuffer: 1 << 26 });
}

/** Makes a file once for all test processes: in a folder aside, then moved into place in one step. */
async function makeOnce(path: string, make: (folder: string) => Promise<string>): Promise<string> {
  if (!existsSync(path)) {
    mkdirSync(KEPT, { recursive: true });
    const folder = mkdtempSync(join(KEPT, 'making-'));
    try {
      renameSync(await make(folder), path);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  return path;
}

function sourcesUnder(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => ['.c', '.cpp', '.S'].includes(extname(name)))
    .map((name) => join(folder, name))
    .sort();
}

function digest(texts: readonly string[]): string {
  const hash = createHash('sha256');
  for (const text of texts) {
    hash.update(text).update('\0');
  }
  return hash.digest('hex').slice(0, 16);
}

async function archiveOf(
  title: string,
  sources: readonly string[],
  flags: readonly string[],
): Promise<string> {
  const key = digest([...flags, ...RENAMED.flat(), ...sources.map((source) => readFileSync(source, 'utf8'))]);
  return makeOnce(join(KEPT, `${title}-${key}.a`), async (folder) => {
    const objects: string[] = [];
    for (const [index, source] of sources.entries()) {
      const object = join(folder, `${index}-${basename(source)}.o`);
      await compileOne(source, object, flags);
      objects.push(object);
    }
    const archive = join(folder, 'archive.a');
    await execute('avr-ar', ['rcs', archive, ...objects]);
    return archive;
  });
}

/** The libraries of the core's package whose headers the sketch includes, directly or through one another. */
function librariesFor(files: readonly SketchFile[]): readonly string[] {
  const known = readdirSync(join(CORE, 'libraries'));
  const wanted = new Set<string>();
  const look = (text: string) => {
    for (const [, header = ''] of text.matchAll(/^[ \t]*#[ \t]*include[ \t]*[<"]([^>"]+)[>"]/gm)) {
      const name = known.find((each) => existsSync(join(CORE, 'libraries', each, 'src', header)));
      if (name !== undefined && !wanted.has(name)) {
        wanted.add(name);
        look(readFileSync(join(CORE, 'libraries', name, 'src', header), 'utf8'));
      }
    }
  };
  for (const file of files) {
    look(file.text);
  }
  return [...wanted].map((name) => join(CORE, 'libraries', name, 'src'));
}

/**
 * Compiles a sketch.
 * @param files The `.ino` files in the order they are joined in, and whatever else lies beside them.
 * @throws Error with the compiler's output where it does not compile.
 */
export async function compileFirmware(
  files: readonly SketchFile[],
  target: Target,
  options: CompileOptions = {},
): Promise<Firmware> {
  const renamed = options.skipWaits === true ? [...RENAMED, SKIPPED_WAIT] : RENAMED;
  const libraries = librariesFor(files);
  const flags = [...flagsOf(target), ...libraries.map((folder) => `-I${folder}`)];
  const core = await archiveOf('core', sourcesUnder(join(CORE, 'cores/arduino')), flagsOf(target));
  const chip = await archiveOf('recorder', sourcesUnder(CHIP).filter(isForChip), flagsOf(target));
  const archives: string[] = [];
  for (const folder of libraries) {
    archives.push(await archiveOf('library', sourcesUnder(folder), flags));
  }
  const folder = mkdtempSync(join(KEPT, 'sketch-'));
  const dispose = () => rmSync(folder, { recursive: true, force: true });
  try {
    const tabs = files.filter((file) => file.name.endsWith('.ino'));
    const others = files.filter((file) => !file.name.endsWith('.ino'));
    const texts = [{ name: 'joined-sketch.cpp', text: joinSketch(tabs) }, ...others];
    const objects: string[] = [];
    for (const { name, text } of texts) {
      writeFileSync(join(folder, basename(name)), text);
    }
    for (const { name } of texts) {
      const source = join(folder, basename(name));
      if (['.c', '.cpp'].includes(extname(source))) {
        await compileOne(source, `${source}.o`, [...flags, ...PLACE_FLAGS, `-I${folder}`]);
        await execute('avr-objcopy', [
          ...renamed.flatMap(([from, to]) => ['--redefine-sym', `${from}=${to}`]),
          `${source}.o`,
        ]);
        objects.push(`${source}.o`);
      }
    }
    const elf = join(folder, 'firmware.elf');
    const together = [...objects, ...archives, chip, core];
    await execute('avr-gcc', [
      `-mmcu=${target.mcu}`,
      '-Os',
      '-Wl,--gc-sections',
      '-o',
      elf,
      '-Wl,--start-group',
      ...together,
      '-Wl,--end-group',
      '-lm',
    ]);
    return { elf, dispose };
  } catch (error) {
    dispose();
    throw error;
  }
}

function isForChip(source: string): boolean {
  return basename(source) !== 'runner.c';
}

/** The program that runs firmwares on the simulated chip. */
export async function compileRunner(): Promise<string> {
  const source = join(CHIP, 'runner.c');
  const texts = ['runner.c', 'chips.h', 'seen-calls.h'].map((name) => readFileSync(join(CHIP, name), 'utf8'));
  return makeOnce(join(KEPT, `runner-${digest(texts)}`), async (folder) => {
    const program = join(folder, 'runner');
    await execute('gcc', ['-O2', '-Wall', '-Wextra', '-Werror', '-o', program, source, '-lsimavr', '-lelf']);
    return program;
  });
}
