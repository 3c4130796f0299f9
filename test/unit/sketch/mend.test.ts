/** What is made whole before the grammar sees it, and that whole text is left alone. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createSketchParser, readSketch } from '../../../server/src/sketch';
import { mend } from '../../../server/src/sketch/mend/mend';
import { longSketch } from './long-sketch';
import { libraries, platform } from './platform';
import { parser, read, table } from './reading';
import { samples } from './samples';

const inSetup = (line: string) => `void setup() {\n  ${line}\n  pinMode(7, OUTPUT);\n}\n\nvoid loop() {\n}\n`;

describe('in a body', () => {
  const rows: readonly (readonly [line: string, mended: string])[] = [
    ['i', 'i;'],
    ['if (is', '    is;'],
    ['if (is) { foo(', 'if (is) { foo();}'],
    ['for (int i = 0; i <', '     int i = 0; i  ;'],
    ['foo(1, bar[2', 'foo(1, bar[2]);'],
    ['foo(1,', 'foo(1 );'],
    ['int x[] = {1, 2', 'int x[] = {1, 2};'],
    ['int x =', 'int x ='],
    ['Serial.', 'Serial ;'],
    ['Serial.print("tide (', 'Serial.print("tide (");'],
    ["char c = 'x", 'char c =  x;'],
    ['switch (level) {', 'switch (level) {}'],
    ['switch (level) { case 1', 'switch (level) { case 1:;}'],
    ['do {', '   {}'],
    ['/* what', '// what'],
    ['#if X', '     '],
    ['}', ' '],
    ['{', '{}'],
    ['level = ready ?', 'level = ready  ;'],
  ];
  it.each(rows)('%s', (line, mended) => {
    expect(mend(inSetup(line)).text).toBe(inSetup(mended));
  });
  it.each(rows)('%s keeps the line below', async (line) => {
    expect(await table(inSetup(line))).toContain('setup pinMode 7 = 1 output');
  });
});

describe('at the top', () => {
  const below = '\n\nvoid setup() {\n  pinMode(7, OUTPUT);\n}\n';
  const rows: readonly (readonly [line: string, mended: string])[] = [
    ['vo', 'vo;'],
    ['void blink(', 'void blink();'],
    ['void blink() {', 'void blink() {}'],
    ['class Lamp { public: void on() {', 'class Lamp { public: void on() {}};'],
    ['struct', '      '],
    ['template <typename T', '                    '],
    ['enum Mode { calm, rou', 'enum Mode { calm, rou};'],
    ['const byte pins[] = {1, ', 'const byte pins[] = {1 }; '],
    ['#include <Ser', '             '],
    ['}', ' '],
  ];
  it.each(rows)('%s', (line, mended) => {
    expect(mend(line + below).text).toBe(mended + below);
  });
});

it('leaves whole texts alone', () => {
  for (const text of [...samples, longSketch(1000)]) expect(mend(text).isWhole).toBe(true);
  const statements = [
    'for (byte i = 0;\n       i < 3;\n       i++)\n    foo(i,\n        2);',
    'int level = ready\n    ? 3\n    : 4;',
    'auto ring = [](int times) {\n    delay(times);\n  };',
    'if (a &&\n      b) {\n    c();\n  } else\n    d();',
    'const int far = near +\n    3;',
    'do\n    x();\n  while (y);',
    'return;',
  ];
  for (const statement of statements) expect(mend(inSetup(statement)).text).toBe(inSetup(statement));
});

it('finds the way back from every place of a mended text', () => {
  const cut = fc.record({ at: fc.nat(2000), length: fc.nat(30), nth: fc.nat(samples.length - 1) });
  fc.assert(
    fc.property(cut, ({ at, length, nth }) => {
      const sample = samples[nth] ?? '';
      const text = sample.slice(0, at % sample.length) + sample.slice((at % sample.length) + length);
      const mended = mend(text);
      let last = 0;
      for (let offset = 0; offset <= mended.text.length; offset += 1) {
        const source = mended.toSource(offset);
        expect(source).toBeGreaterThanOrEqual(last);
        // A character that was neither put in nor blanked is the one at its place.
        const char = mended.text[offset];
        const isInserted = mended.toSource(offset + 1) === source;
        if (!isInserted && char !== ' ' && char !== '/') expect(char).toBe(text[source]);
        last = source;
      }
      expect(last).toBe(text.length);
    }),
    { numRuns: 300 },
  );
});

it('gives both engines the same facts of half a text', async () => {
  const native = await parser();
  const wasm = await createSketchParser({ engine: 'wasm' });
  for (const sample of samples) {
    for (let end = 0; end < sample.length; end += 7) {
      const [one, other] = [native, wasm].map((engine) => engine.parse('a.ino', sample.slice(0, end)));
      if (one === undefined || other === undefined) throw new Error('not parsed');
      expect(readSketch([other], platform, libraries)).toEqual(readSketch([one], platform, libraries));
      one.dispose();
      other.dispose();
    }
  }
});

describe('damage', () => {
  const damaged = async (text: string) => (await read(text)).damaged === true;
  it('is said where a comment swallows a call', async () => {
    expect(await damaged('void setup() {\n  /*\n  pinMode(7, OUTPUT);\n  /* why */\n}\n')).toBe(true);
  });
  it('is said of a pin call without its pin', async () => {
    expect(await damaged(inSetup('pinMode('))).toBe(true);
  });
  it('is not said of whole texts and of oddities without calls', async () => {
    for (const text of samples) expect(await damaged(text)).toBe(false);
    expect(await damaged(inSetup('i'))).toBe(false);
    expect(await damaged(`ATTRIBUTE void blink() {}\n${inSetup('@ x;')}`)).toBe(false);
  });
});
