/** Texts nobody should write: bounded work, a said limit, no exception. */
import { describe, expect, it } from 'vitest';
import { parser, read, table } from './reading';

/** A generous bound for a loaded machine; the work itself takes a small part of it. */
const mostMilliseconds = 5000;

async function survives(text: string): Promise<Awaited<ReturnType<typeof read>>> {
  const started = performance.now();
  const facts = await read(text);
  expect(performance.now() - started).toBeLessThan(mostMilliseconds);
  return facts;
}

const inSetup = (body: string) => `void setup() {\n${body}\n}\n`;

describe('texts without sense', () => {
  const texts: Readonly<Record<string, string>> = {
    'nothing at all': '',
    'white space': ' \n\t\r\n',
    'binary bytes': Array.from({ length: 20_000 }, (_, at) => String.fromCharCode((at * 7919) % 256)).join(
      '',
    ),
    'lone surrogates': '\uD83D\uDCA1\uD83D x \uDCA1'.repeat(500),
    'brackets that open': '{'.repeat(20_000),
    'brackets that close': '})]'.repeat(20_000),
    'brackets that open in a call': inSetup(`digitalWrite${'('.repeat(5000)}`),
    'directives that never end': '#if 1\n'.repeat(3000),
    'a comment that never ends': `void setup() {}/*${'x'.repeat(100_000)}`,
    'a string that never ends': `const char *s = "${'x'.repeat(100_000)}`,
  };
  for (const [about, text] of Object.entries(texts)) {
    it(about, async () => {
      const facts = await survives(text);
      expect(facts.uses).toEqual([]);
    });
  }
});

describe('too much of everything', () => {
  it('a line of five million characters is not read, and that is said', async () => {
    const facts = await survives(`int x = ${'1+'.repeat(2_500_000)}1;`);
    expect(facts.problems.map(({ code }) => code)).toEqual(['file-too-long']);
  });

  it('an array of ten thousand pins', async () => {
    const list = Array.from({ length: 10_000 }, (_, at) => at % 20).join(', ');
    const text = `const byte pins[] = {${list}};\n${inSetup('for (int i = 0; i < 10000; i++) pinMode(pins[i], OUTPUT);\npinMode(pins[7], OUTPUT);')}`;
    const facts = await survives(text);
    expect(facts.uses.map(({ pins }) => pins)).toEqual([
      { kind: 'known', values: Array.from({ length: 20 }, (_, at) => at) },
      { kind: 'known', values: [7] },
    ]);
  });

  it('an array of ten thousand names', async () => {
    const list = Array.from({ length: 10_000 }, (_, at) => (at % 2 === 0 ? 'A0' : 'A1')).join(', ');
    const facts = await survives(`int pins[] = {${list}};\n${inSetup('pinMode(pins[9], OUTPUT);')}`);
    expect(facts.uses.map(({ pins }) => pins)).toEqual([{ kind: 'known', values: [14, 15] }]);
  });

  it('a macro that doubles thirty times', async () => {
    const lines = Array.from({ length: 30 }, (_, at) => `#define X${at + 1} (X${at} + X${at})`).join('\n');
    const facts = await survives(`#define X0 1\n${lines}\n${inSetup('pinMode(X30, OUTPUT);')}`);
    expect(facts.problems.map(({ code }) => code)).toEqual(['analysis-stopped']);
  });

  it('macros in a ring', async () => {
    expect(await table(`#define A1_ B1_\n#define B1_ A1_\n${inSetup('pinMode(A1_, OUTPUT);')}`)).toEqual([
      'setup pinMode ? `A1_` is not defined in the sketch = 1 output',
    ]);
  });

  it('an expression nested ten thousand deep', async () => {
    const facts = await survives(inSetup(`pinMode(${'('.repeat(10_000)}3${')'.repeat(10_000)}, OUTPUT);`));
    expect(facts.problems.map(({ code }) => code)).toContain('nested-too-deep');
  });

  it('a sum of ten thousand terms', async () => {
    const facts = await survives(inSetup(`pinMode(${'1+'.repeat(10_000)}1, OUTPUT);\npinMode(4, OUTPUT);`));
    expect(facts.problems.map(({ code }) => code)).toContain('nested-too-deep');
    expect(facts.uses.at(-1)?.pins).toEqual({ kind: 'known', values: [4] });
  });

  it('blocks nested ten thousand deep', async () => {
    const facts = await survives(inSetup(`${'{'.repeat(10_000)} pinMode(3, OUTPUT); ${'}'.repeat(10_000)}`));
    expect(facts.problems.map(({ code }) => code)).toContain('nested-too-deep');
  });

  it('functions that call each other without end', async () => {
    const facts = await survives(
      `void a(int n) { pinMode(3, OUTPUT); b(n + 1); b(n); }\nvoid b(int n) { a(n + 1); a(n); }\n${inSetup('a(0);\npinMode(4, OUTPUT);')}`,
    );
    expect(facts.uses[0]?.pins).toEqual({ kind: 'known', values: [3] });
    expect(facts.problems.length).toBeGreaterThan(0);
  });

  it('classes that contain and inherit themselves', async () => {
    await survives(
      'struct A : public B { A a; B b; };\nstruct B : public A { A a; };\nA one;\nB two;\nvoid setup() { one.x(); }',
    );
  });

  it('loops in loops in loops', async () => {
    const heads = Array.from({ length: 8 }, (_, at) => `for (int i${at} = 0; i${at} < 200; i${at}++)`).join(
      ' ',
    );
    const facts = await survives(inSetup(`${heads} digitalWrite(i7 % 4, HIGH);\npinMode(4, OUTPUT);`));
    expect(facts.uses.at(-1)?.pins).toEqual({ kind: 'known', values: [4] });
  });

  it('undecided branches one after the other do not double', async () => {
    const body = Array.from({ length: 400 }, (_, at) => `if (digitalRead(2)) x += ${at};`).join('\n');
    const facts = await survives(`int x = 0;\n${inSetup(`${body}\ndigitalWrite(3, x);`)}`);
    expect(facts.uses.at(-1)?.certain).toBe(true);
  });

  it('five thousand functions that nobody calls', async () => {
    const functions = Array.from(
      { length: 5000 },
      (_, at) => `void f${at}() { pinMode(${at % 20}, OUTPUT); }`,
    ).join('\n');
    expect((await survives(`${functions}\n${inSetup('f7();')}`)).uses.length).toBe(1);
  });

  it('names that objects have by themselves', async () => {
    const text = inSetup(
      'constructor(3); __proto__(4); toString(5); int hasOwnProperty = 6; pinMode(hasOwnProperty, OUTPUT); pinMode(valueOf, OUTPUT);',
    );
    expect(await table(text)).toEqual([
      'setup pinMode 6 = 1 output',
      'setup pinMode ? `valueOf` is not defined in the sketch = 1 output',
    ]);
  });

  it('every beginning of a sketch', async () => {
    const text =
      'struct L { int p; };\nL l[] = {{3}, {4}};\n#define ON(x) digitalWrite(x, HIGH)\nvoid setup() { for (auto &o : l) { pinMode(o.p, OUTPUT); ON(o.p); } }\nvoid loop() {}\n';
    const engine = await parser();
    for (let end = 0; end <= text.length; end += 1) {
      await read(text.slice(0, end));
      await read(text.slice(end));
    }
    expect(engine.engine).toBe('wasm');
  });
});
