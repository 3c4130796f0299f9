/** The built program's `uses`: what it prints of sketches with and without a manifest, in files of every layout. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../fixture/bench';

const CLI = join(root, 'server/dist/cli.js');

let base = '';
beforeAll(() => {
  if (!existsSync(CLI)) {
    throw new Error('server/dist/cli.js is not built: run npm run build');
  }
  base = realpathSync(mkdtempSync(join(tmpdir(), 'uses-test-')));
});
afterAll(() => {
  rmSync(base, { recursive: true, force: true });
});

function put(path: string, text: string | Uint8Array): void {
  mkdirSync(dirname(join(base, path)), { recursive: true });
  writeFileSync(join(base, path), text);
}

function wiretrue(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, 'uses', ...args], {
    cwd: base,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

interface JsonUse {
  readonly sketch: string;
  readonly call: string;
  readonly pins: readonly number[] | null;
  readonly value: readonly number[] | null;
  readonly file: string;
}

interface JsonOutput {
  readonly uses: readonly JsonUse[];
  readonly stats: Readonly<Record<string, unknown>>;
}

function json(...args: string[]): { status: number | null; stderr: string; output: JsonOutput } {
  const { status, stdout, stderr } = wiretrue('--format', 'json', ...args);
  return { status, stderr, output: JSON.parse(stdout) as JsonOutput };
}

/** `pinMode 7 1`, one a use. */
const words = (output: JsonOutput) =>
  output.uses.map(({ call, pins, value }) => `${call} ${pins ?? '?'} ${value ?? ''}`.trim());

const FOGHORN = `#define HORN 7
const int levels[] = { 3, 5 };

void setup() {
  pinMode(HORN, OUTPUT);
  Serial.begin(9600);
}

void sound(int pin) {
  digitalWrite(pin, HIGH);
}

void loop() {
  sound(HORN);
  digitalRead(Serial.read());
  analogWrite(levels[analogRead(A0) & 1], 99);
}
`;

describe('one sketch without a manifest', () => {
  test('every use with place, path, value and how the pin was got; the counts', () => {
    put('foghorn/foghorn.ino', FOGHORN);
    const { status, stderr, output } = json('foghorn');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const pinUses = output.uses.filter(({ pins }) => pins === null || pins.length > 0);
    expect(pinUses.filter(({ call }) => call !== 'Serial.begin' && call !== 'Serial.read')).toEqual([
      {
        sketch: 'foghorn',
        call: 'pinMode',
        action: 'mode',
        pins: [7],
        value: [1],
        modes: ['output'],
        file: 'foghorn/foghorn.ino',
        line: 5,
        column: 3,
        function: 'setup',
        path: [],
        phase: 'setup',
        certain: true,
        how: '7, from `HORN`, line 1',
      },
      {
        sketch: 'foghorn',
        call: 'digitalWrite',
        action: 'write',
        pins: [7],
        value: [1],
        file: 'foghorn/foghorn.ino',
        line: 10,
        column: 3,
        function: 'sound',
        path: [{ function: 'sound', file: 'foghorn/foghorn.ino', line: 14 }],
        phase: 'loop',
        certain: true,
        how: expect.stringContaining('`HORN`, line 1'),
      },
      expect.objectContaining({
        call: 'digitalRead',
        pins: null,
        reason: expect.stringMatching(/\S/),
        value: null,
        line: 15,
      }),
      expect.objectContaining({ call: 'analogRead', pins: [14], value: null, line: 16, column: 22 }),
      expect.objectContaining({ call: 'analogWrite', pins: [3, 5], value: [99], certain: false }),
    ]);
    expect(output.stats).toMatchObject({
      sketches: 1,
      files: 1,
      arguments: { exact: 3, set: 1, unresolved: 1 },
      limits: [],
      boards: [{ sketch: 'foghorn', board: 'uno-r3', by: 'assumed' }],
      problems: [],
    });
  });

  test('the text: grouped by pin with its name on the board, one line a use, the counts last', () => {
    put('foghorn/foghorn.ino', FOGHORN);
    const { status, stdout } = wiretrue('foghorn');
    expect(status).toBe(0);
    const lines = stdout.split('\n');
    expect(lines[0]).toBe('foghorn: 1 file, board uno-r3, assumed: neither a manifest nor --board names one');
    const titles = lines.filter((line) => /^(pin|no pin)/.test(line));
    expect(titles.filter((title) => !/^no pin|\(D[01]\)/.test(title))).toEqual([
      'pin 7 (D7)',
      'pin 14 (A0)',
      'pins 3 (D3), 5 (D5)',
      'pin not known',
    ]);
    expect(stdout).toMatch(/^ {2}foghorn\.ino:5:3 +setup +pinMode +output +from `HORN`, line 1$/m);
    expect(stdout).toMatch(/^ {2}foghorn\.ino:10:3 +loop > sound +digitalWrite +1 +\S/m);
    expect(stdout).toMatch(/^ {2}foghorn\.ino:16:3 +loop +analogWrite +99 +perhaps; /m);
    expect(lines.at(-2)).toMatch(/^\d+ calls, 5 pin arguments: 3 exact, 1 as a set, 1 unresolved$/);
  });

  test('a bare .ino in a folder of another name', () => {
    put('bare/x.ino', 'void setup() { pinMode(4, INPUT); }\nvoid loop() {}\n');
    expect(words(json('bare/x.ino').output)).toEqual(['pinMode 4 0']);
  });
});

test('arguments are counted where a call names its pins, not where it takes those of a bus', () => {
  const setup = 'void setup() { Serial.begin(9600); Serial.println(1); lcd.begin(16, 2); }';
  put('sign/sign.ino', `LiquidCrystal lcd(12, 11, 5, 4, 3, 2);\n${setup}\nvoid loop() { delay(9); }\n`);
  const { uses, stats } = json('sign').output;
  expect(new Set(uses.flatMap(({ pins }) => pins ?? []))).toEqual(new Set([0, 1, 2, 3, 4, 5, 11, 12]));
  expect(stats).toMatchObject({ calls: 5, arguments: { exact: 6, set: 0, unresolved: 0 } });
});

describe('the board', () => {
  const sketch = 'void setup() { pinMode(LED_BUILTIN, OUTPUT); }\nvoid loop() {}\n';
  test("is the named one, else the manifest's, and the output says which", () => {
    put('lamp/lamp.ino', sketch);
    expect(words(json('lamp', '--board', 'pico').output)).toEqual(['pinMode 25 1']);
    put('wired/hardware.jsonc', '{ "format": 1, "board": "pico" }');
    put('wired/wired.ino', sketch);
    expect(words(json('wired').output)).toEqual(['pinMode 25 1']);
    expect(json('wired').output.stats.boards).toEqual([{ sketch: 'wired', board: 'pico', by: 'manifest' }]);
    expect(words(json('wired', '--board=uno-r3').output)).toEqual(['pinMode 13 1']);
    expect(wiretrue('wired').stdout).toMatch(/^wired: 1 file, board pico, from its manifest\n/);
  });

  test('can be a file, counted from the current folder', () => {
    put('lamp/lamp.ino', sketch);
    put('boards/own.json', '{ "extends": "pico", "title": "Own board" }');
    expect(json('lamp', '--board', 'boards/own.json')).toMatchObject({ status: 0 });
  });

  test('that does not exist is refused with the nearest name; a broken manifest falls back and says so', () => {
    put('lamp/lamp.ino', sketch);
    expect(wiretrue('lamp', '--board', 'uno-r2')).toEqual({
      status: 2,
      stdout: '',
      stderr: 'wiretrue: There is no board "uno-r2". Did you mean uno-r3?\n',
    });
    put('half/hardware.jsonc', '{ "board": ');
    put('half/half.ino', sketch);
    const { status, stderr, output } = json('half');
    expect(status).toBe(0);
    expect(stderr).toMatch(/^wiretrue: half: The manifest names no board that can be used/);
    expect(words(output)).toEqual(['pinMode 13 1']);
  });
});

describe('files', () => {
  test('all tabs, src, and shared headers are one sketch; macros of an included header count', () => {
    put(
      'top/gate/gate.ino',
      '#include "../shared/pins.h"\n#if GATE_PIN == 9\nvoid setup() { open(); }\n#endif\n',
    );
    put('top/gate/b.ino', 'void loop() { lift(); }\n');
    put('top/gate/src/lift/lift.cpp', '#include "lift.h"\nvoid lift() { digitalWrite(LIFT, HIGH); }\n');
    put('top/gate/src/lift/lift.h', '#define LIFT 12\nvoid lift();\n');
    put('top/gate/a.ino', 'void open() { pinMode(GATE_PIN, OUTPUT); }\n');
    put('top/gate/pins.example.h', '#define GATE_PIN 3\n');
    put('top/shared/pins.h', '#pragma once\n#define GATE_PIN 9\n');
    const { output } = json('top');
    expect(words(output)).toEqual(['pinMode 9 1', 'digitalWrite 12 1']);
    expect(output.uses.map(({ file }) => file)).toEqual(['top/gate/a.ino', 'top/gate/src/lift/lift.cpp']);
    expect(output.stats).toMatchObject({ sketches: 1, files: 6 });
  });

  test('of two headers the one whose branch the board compiles', () => {
    const branch = '#ifdef __AVR_ATmega328P__\n#include "uno.h"\n#else\n#include "other.h"\n#endif\n';
    put('either/either.ino', `${branch}void setup() { pinMode(lamp, OUTPUT); }\nvoid loop() {}\n`);
    put('either/uno.h', 'const int lamp = 5;\n');
    put('either/other.h', 'const int lamp = 17;\n');
    expect(words(json('either').output)).toEqual(['pinMode 5 1']);
    expect(words(json('either', '--board', 'pico').output)).toEqual(['pinMode 17 1']);
  });

  test('a folder of sketches: each apart, in order, and summed up', () => {
    for (const [name, pin] of [
      ['b', 2],
      ['a', 3],
    ]) {
      put(`many/${name}/${name}.ino`, `void setup() { pinMode(${pin}, OUTPUT); }\nvoid loop() {}\n`);
    }
    const { output } = json('many');
    expect(output.uses.map(({ sketch, pins }) => [sketch, pins])).toEqual([
      ['many/a', [3]],
      ['many/b', [2]],
    ]);
    expect(wiretrue('many').stdout).toMatch(/\n\n2 sketches: 2 calls, 2 pin arguments: 2 exact, /);
  });

  test('headers that include each other, bytes that are no text, an empty file: no crash', () => {
    put('round/round.ino', '#include "./a.h"\nvoid setup() { pinMode(PIN, OUTPUT); }\nvoid loop() {}\n');
    put('round/a.h', '#include "./b.h"\n#include "./a.h"\n');
    put('round/b.h', '#include "./a.h"\n#define PIN 6\n');
    put(
      'noise/noise.ino',
      Uint8Array.from({ length: 4096 }, (_, at) => (at * 167 + (at >> 3)) & 255),
    );
    put('void/void.ino', '');
    expect(words(json('round').output)).toEqual(['pinMode 6 1']);
    const odd = wiretrue('noise', 'void');
    expect({ status: odd.status, stderr: odd.stderr }).toEqual({ status: 0, stderr: '' });
    expect(odd.stdout.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });

  test('a path that leads nowhere ends with 2, and the others are printed', () => {
    put('bare/x.ino', 'void setup() { pinMode(4, INPUT); }\nvoid loop() {}\n');
    const { status, stderr, output } = json('gone', 'bare');
    expect({ status, stderr }).toEqual({ status: 2, stderr: 'wiretrue: gone: does not exist\n' });
    expect(words(output)).toEqual(['pinMode 4 0']);
    expect(output.stats.problems).toEqual([{ path: 'gone', why: 'does not exist' }]);
  });

  test('what was not followed to its end is said with its place', () => {
    put(
      'deep/deep.ino',
      `void setup() { int x = ${'('.repeat(2000)}1${')'.repeat(2000)}; }\nvoid loop() {}\n`,
    );
    const { output } = json('deep');
    expect(output.stats.limits).toEqual([
      expect.objectContaining({ sketch: 'deep', file: 'deep/deep.ino', line: 1 }),
    ]);
    expect(wiretrue('deep').stdout).toContain('not followed to the end\n  deep.ino:1  ');
  });
});
