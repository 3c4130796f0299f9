/** Where things stand in the user's text: spans, names with their references, the way a number went, the place in setup(). */
import { describe, expect, it } from 'vitest';
import type { Span } from '../../../server/src/base/span';
import { read } from './reading';

const at = (text: string, span: Span | undefined) =>
  span === undefined ? undefined : text.slice(span.start, span.end);

/** Every place of a word in a text. */
function places(text: string, word: string): number[] {
  return [...text.matchAll(new RegExp(`\\b${word}\\b`, 'g'))].map((match) => match.index);
}

describe('spans', () => {
  it('are exact behind characters of two units and line endings of two', async () => {
    const text =
      '// \u{1F4A1} 漢字\r\nconst byte lamp = 7;\r\nvoid setup() {\r\n  pinMode(lamp, OUTPUT);\r\n}\r\n';
    const { uses } = await read(text);
    const [use] = uses;
    expect([at(text, use?.span), at(text, use?.callSpan), at(text, use?.valueSpan)]).toEqual([
      'lamp',
      'pinMode(lamp, OUTPUT)',
      'OUTPUT',
    ]);
    expect(use?.origins.map((span) => at(text, span))).toEqual(['lamp']);
    expect(use?.origins[0]?.start).toBe(text.indexOf('lamp'));
    expect([use?.how, use?.pinText]).toEqual(['7, from `lamp`, line 2', 'lamp']);
  });

  it('of a macro are where it stands in the sketch; of its argument, the argument', async () => {
    const text =
      '#define LAMP 7\n#define PUT(pin, level) digitalWrite(pin, level)\n#define ALL_OFF digitalWrite(LAMP, LOW)\nvoid setup() {\n  PUT(LAMP, HIGH);\n  ALL_OFF;\n}\n';
    const { uses } = await read(text);
    expect(uses.map((use) => [at(text, use.callSpan), at(text, use.span), use.pinText])).toEqual([
      ['PUT(LAMP, HIGH)', 'LAMP', 'LAMP'],
      ['ALL_OFF', 'ALL_OFF', 'LAMP'],
    ]);
    expect(uses[0]?.span.start).toBe(text.indexOf('LAMP, HIGH'));
  });

  it('two calls of one macro without arguments stay two uses', async () => {
    const { uses } = await read(
      '#define BOTH digitalWrite(3, 1); digitalWrite(4, 1)\nvoid setup() { BOTH; }\n',
    );
    expect(uses.map((use) => use.pins)).toEqual([
      { kind: 'known', values: [3] },
      { kind: 'known', values: [4] },
    ]);
  });

  it('of an interrupt are the pin, where it is written', async () => {
    const text = 'void f() {}\nvoid setup() { attachInterrupt(digitalPinToInterrupt(2), f, RISING); }';
    const { uses } = await read(text);
    expect(at(text, uses[0]?.span)).toBe('2');
  });
});

describe('the way of a number', () => {
  it('goes through the function that was called, with each call', async () => {
    const text =
      'const int horn = 4;\nvoid put(int pin) { digitalWrite(pin, HIGH); }\nvoid sound(int pin) { put(pin); }\nvoid loop() { sound(horn); }\n';
    const { uses } = await read(text);
    expect(uses[0]?.function).toBe('put');
    expect(uses[0]?.path.map(({ function: name, span }) => [name, at(text, span)])).toEqual([
      ['sound', 'sound(horn)'],
      ['put', 'put(pin)'],
    ]);
    expect([uses[0]?.how, uses[0]?.pinText]).toEqual(['4, from `horn`, line 1', 'horn']);
  });

  it('tells the element of an array that a number came from', async () => {
    const { uses } = await read(
      'const byte pins[] = {3, 5, 12};\nvoid setup() { pinMode(pins[2], OUTPUT); }',
    );
    expect(uses[0]?.how).toBe('12, from `pins[2]`, line 1');
  });

  const rows: readonly [string, string, string, string | undefined][] = [
    ['a literal has none', 'void setup() { pinMode(7, OUTPUT); }', '7', undefined],
    ['a name of the board', 'void setup() { pinMode(A1, OUTPUT); }', 'A1', "15, from the board's `A1`"],
    [
      'a sum',
      '#define BASE 4\nvoid setup() { pinMode(BASE + 1, OUTPUT); }',
      '5',
      '5, reckoned from `BASE`, line 1',
    ],
    [
      'an analogue input by its count',
      'const int dial = 2;\nvoid loop() { analogRead(dial); }',
      '16',
      '16, reckoned from `dial`, line 1',
    ],
    [
      'two steps',
      '#define P 4\nconst int lamp = P;\nvoid setup() { pinMode(lamp, OUTPUT); }',
      'lamp',
      '4, from `lamp`, line 2, from `P`, line 1',
    ],
    [
      'a variable that changes is no name for setup()',
      'int p = 4;\nvoid setup() { pinMode(p, OUTPUT); p = 5; }',
      '4',
      '4, from `p`, line 1',
    ],
    [
      'a local is no name for setup()',
      '\nvoid setup() { int p = 4; pinMode(p, OUTPUT); }',
      '4',
      '4, from `p`, line 2',
    ],
    [
      'a name in a namespace',
      'namespace hw { const int p = 4; }\nvoid setup() { pinMode(hw::p, OUTPUT); }',
      'hw::p',
      '4, from `p`, line 1',
    ],
    [
      'an entry that is no number',
      'enum class Pin { p = 4 };\nvoid setup() { pinMode((int)Pin::p, OUTPUT); }',
      '4',
      '4, from `p`, line 1',
    ],
    [
      'several',
      'int pins[] = {3, 4, 5};\nvoid setup() { for (int p : pins) pinMode(p, OUTPUT); }',
      '3, 4, 5',
      '3, 4 or 5, from `p`, line 2, from `pins`, line 1',
    ],
    ['unknown', 'void setup() { pinMode(Serial.read() + 1, OUTPUT); }', 'Serial.read() + 1', undefined],
  ];
  for (const [about, text, pinText, how] of rows) {
    it(about, async () => {
      const { uses } = await read(text);
      expect([uses[0]?.pinText, uses[0]?.how]).toEqual([pinText, how]);
    });
  }
});

describe('pin names', () => {
  it('have their definition and every other place, comments and strings left out', async () => {
    const text =
      'const int lamp = 7; // the lamp\n#define AGAIN lamp\nvoid setup() { pinMode(lamp, OUTPUT); Serial.println("lamp"); }\nvoid loop() { digitalWrite(AGAIN, HIGH); }\nvoid other(int lamp) { digitalWrite(lamp, LOW); }\n';
    const { pinNames } = await read(text);
    expect(pinNames.map(({ name, pins }) => [name, pins])).toEqual([
      ['lamp', [7]],
      ['AGAIN', [7]],
    ]);
    const all = places(text, 'lamp');
    // The first is the definition; then one stands in a comment, one in a string, and two mean a parameter.
    const wanted = [all[2], all[3]];
    expect(pinNames[0]?.definition.start).toBe(all[0]);
    expect(pinNames[0]?.references.map(({ start }) => start)).toEqual(wanted);
    for (const { name, references } of pinNames)
      for (const span of references) expect(at(text, span)).toBe(name);
  });

  it('of locals stay in their function', async () => {
    const text =
      'void setup() { const int p = 4; pinMode(p, OUTPUT); }\nvoid loop() { const int p = 5; digitalWrite(p, HIGH); }\n';
    const { pinNames } = await read(text);
    expect(pinNames.map(({ name, pins, references }) => [name, pins, references.length])).toEqual([
      ['p', [4], 1],
      ['p', [5], 1],
    ]);
  });

  it('go over files', async () => {
    const { pinNames } = await read({
      'main.ino': '#include "pins.h"\nvoid setup() { pinMode(LAMP, OUTPUT); }\n',
      'pins.h': '#define LAMP 4\n',
    });
    expect(
      pinNames.map(({ definition, references }) => [definition.file, references.map(({ file }) => file)]),
    ).toEqual([['pins.h', ['main.ino']]]);
  });
});

describe('the place in setup()', () => {
  const rows: readonly [string, string, string, string][] = [
    ['two blanks', 'void setup() {\n  pinMode(3, OUTPUT);\n}\n', '  ', '\n'],
    ['tabs and two-character line ends', 'void setup()\r\n{\r\n\tpinMode(3, OUTPUT);\r\n}\r\n', '\t', '\r\n'],
    ['a comment behind the brace', 'void setup() { // first\n    pinMode(3, OUTPUT);\n}\n', '    ', '\n'],
    ['empty on one line', 'void setup() {}\nvoid loop() {\n    x();\n}\n', '    ', '\n'],
    ['empty on two', 'void setup() {\n}\nvoid loop() {\n\tx();\n}\n', '\t', '\n'],
    ['one line', 'void setup() { pinMode(3, OUTPUT); }\n', '  ', '\n'],
    ['no text but this', 'void setup(){}', '  ', '\n'],
  ];
  for (const [about, text, indent, newline] of rows) {
    it(about, async () => {
      const { setup } = await read(text);
      expect(setup).toEqual({ file: 'sketch.ino', offset: text.indexOf('{') + 1, indent, newline });
      const offset = setup?.offset ?? 0;
      const after = `${text.slice(0, offset)}${newline}${indent}pinMode(9, OUTPUT);${text.slice(offset)}`;
      const { uses } = await read(after);
      expect(uses[0]?.pins).toEqual({ kind: 'known', values: [9] });
      expect(uses.length).toBe(text.includes('3') ? 2 : 1);
    });
  }
  it('is absent without setup()', async () => {
    expect((await read('void loop() {}')).setup).toBeUndefined();
  });
});
