/** The grammar: one function for each way in which a sketch writes its pins. Each says what it makes the sketch do. */
import type { Making } from './generate';
import { expectDriven, OBJECT_WAYS, type Way } from './ways-objects';

/** Makes a pin an output and moves it up and down. */
function drive(making: Making, pin: number, text: string): void {
  making.setup(`pinMode(${text}, OUTPUT);`);
  making.loop(`digitalWrite(${text}, HIGH);\ndigitalWrite(${text}, LOW);`);
  expectDriven(making, pin);
}

/** A number in one of the forms that the language and the core have. */
function numberForm({ random }: Making, value: number): string {
  const forms = [
    String(value),
    `0x${value.toString(16)}`,
    `0b${value.toString(2)}`,
    `B${value.toString(2)}`,
    `0${value.toString(8)}`,
    `${value}U`,
    `(${value})`,
    `${value - 1} + 1`,
    `(uint8_t)${value}`,
    `${value + 256} % 256`,
  ];
  return random.pick(forms);
}

/** The name the core has for a pin, where it has one. */
function boardName(pin: number): string {
  return pin >= 14 ? `A${pin - 14}` : pin === 13 ? 'LED_BUILTIN' : String(pin);
}

const TYPES = ['int', 'byte', 'uint8_t', 'unsigned int', 'long', 'char'] as const;

const literal: Way = (m) => {
  const pin = m.pin();
  drive(m, pin, numberForm(m, pin));
};

const named: Way = (m) => {
  const pin = m.pin();
  drive(m, pin, boardName(pin));
};

const macro: Way = (m) => {
  const pin = m.pin();
  const name = m.name('upper');
  m.global(`#define ${name} (${numberForm(m, pin)})`);
  drive(m, pin, name);
};

const macroChain: Way = (m) => {
  const [pin, by] = [m.pin(), 1 + m.random.below(3)];
  const [first, second, third] = [m.name('upper'), m.name('upper'), m.name('upper')];
  m.global(`#define ${second} (${first} + ${by})`);
  m.global(`#define ${third} ${second}`);
  m.global(`#define ${first} ${pin - by}`);
  drive(m, pin, third);
};

const constant: Way = (m) => {
  const pin = m.pin();
  const name = m.name();
  const kind = m.random.pick(['const', 'constexpr', 'static const', 'static']);
  m.global(`${kind} ${m.random.pick(TYPES)} ${name} = ${numberForm(m, pin)};`);
  drive(m, pin, name);
};

const unassigned: Way = (m) => {
  const pin = m.pin();
  const name = m.name();
  m.global(`${m.random.pick(TYPES)} ${name} = ${boardName(pin)};`);
  drive(m, pin, name);
};

const assignedInSetup: Way = (m) => {
  const pin = m.pin();
  const name = m.name();
  m.global(`int ${name};`);
  m.setup(`${name} = ${numberForm(m, pin)};`);
  drive(m, pin, name);
};

const enumeration: Way = (m) => {
  const pin = m.pin();
  const [before, name] = [m.name('upper'), m.name('upper')];
  m.global(
    m.random.once(2) ? `enum { ${before} = ${pin - 1}, ${name} };` : `enum { ${name} = ${pin}, ${before} };`,
  );
  drive(m, pin, name);
};

const space: Way = (m) => {
  const pin = m.pin();
  const [outer, name] = [m.name(), m.name()];
  m.global(`namespace ${outer} { const byte ${name} = ${pin}; }`);
  drive(m, pin, `${outer}::${name}`);
};

const arrayLoop: Way = (m) => {
  const pins = m.pins(2 + m.random.below(3));
  const name = m.name();
  const i = m.random.pick(['i', 'n', 'k']);
  const bound = m.random.pick([`sizeof(${name}) / sizeof(${name}[0])`, String(pins.length)]);
  m.global(
    `${m.random.pick(['const byte', 'int', 'const int', 'uint8_t'])} ${name}[] = {${pins.map(boardName).join(', ')}};`,
  );
  const head = m.random.pick([
    `for (unsigned int ${i} = 0; ${i} < ${bound}; ${i}++)`,
    `for (unsigned int ${i} = 0; ${i} <= ${pins.length - 1}; ++${i})`,
  ]);
  m.setup(`${head} {\n  pinMode(${name}[${i}], OUTPUT);\n}`);
  m.loop(`${head} digitalWrite(${name}[${i}], HIGH);\n${head} digitalWrite(${name}[${i}], LOW);`);
  expectDriven(m, ...pins);
};

const arrayRange: Way = (m) => {
  const pins = m.pins(2 + m.random.below(3));
  const [name, each] = [m.name(), m.name()];
  m.global(`const uint8_t ${name}[${pins.length}] = {${pins.join(', ')}};`);
  m.setup(`for (auto ${each} : ${name}) pinMode(${each}, OUTPUT);`);
  m.loop(`for (uint8_t ${each} : ${name}) { digitalWrite(${each}, HIGH); digitalWrite(${each}, LOW); }`);
  expectDriven(m, ...pins);
};

const progmem: Way = (m) => {
  const pins = m.pins(2 + m.random.below(2));
  const name = m.name();
  m.global(`const uint8_t ${name}[] PROGMEM = {${pins.join(', ')}};`);
  const head = `for (byte i = 0; i < ${pins.length}; i++)`;
  m.setup(`${head} pinMode(pgm_read_byte(&${name}[i]), OUTPUT);`);
  m.loop(
    `${head} {\n  digitalWrite(pgm_read_byte(${name} + i), HIGH);\n  digitalWrite(pgm_read_byte(&${name}[i]), LOW);\n}`,
  );
  expectDriven(m, ...pins);
};

const twoDimensions: Way = (m) => {
  const [a, b, c, d] = m.pins(4) as readonly [number, number, number, number];
  const name = m.name();
  m.global(`byte ${name}[2][2] = {{${a}, ${b}}, {${c}, ${d}}};`);
  const heads = 'for (int r = 0; r < 2; r++) for (int c = 0; c < 2; c++)';
  m.setup(`${heads} pinMode(${name}[r][c], OUTPUT);`);
  m.loop(`${heads} {\n  digitalWrite(${name}[r][c], HIGH);\n  digitalWrite(${name}[r][c], LOW);\n}`);
  expectDriven(m, a, b, c, d);
};

const throughCalls: Way = (m) => {
  const pins = m.pins(2);
  const [inner, outer, begin] = [m.name(), m.name(), m.name()];
  const offset = m.random.below(3);
  m.global(`void ${inner}(byte pin, bool on) { digitalWrite(pin, on); }`);
  m.global(
    `void ${outer}(int which) { ${inner}(which + ${offset}, true); ${inner}(which + ${offset}, false); }`,
  );
  m.global(`void ${begin}(int which) { pinMode(which + ${offset}, OUTPUT); }`);
  for (const pin of pins) {
    m.setup(`${begin}(${pin - offset});`);
    m.loop(`${outer}(${pin - offset});`);
  }
  expectDriven(m, ...pins);
};

const returned: Way = (m) => {
  const pins = m.pins(2);
  const name = m.name();
  const [zero, one] = pins;
  const body = m.random.pick([
    `return n == 0 ? ${zero} : ${one};`,
    `if (n == 0) return ${zero}; return ${one};`,
    `switch (n) { case 0: return ${zero}; default: return ${one}; }`,
  ]);
  m.global(`int ${name}(int n) { ${body} }`);
  for (const n of [0, 1]) {
    m.setup(`pinMode(${name}(${n}), OUTPUT);`);
    m.loop(`digitalWrite(${name}(${n}), HIGH);\ndigitalWrite(${name}(${n}), LOW);`);
  }
  expectDriven(m, ...pins);
};

const functionMacro: Way = (m) => {
  const pin = m.pin();
  const [make, put] = [m.name('upper'), m.name('upper')];
  m.global(`#define ${make}(n) pinMode((n) + 1, OUTPUT)`);
  m.global(`#define ${put}(n, level) do { digitalWrite((n) + 1, level); } while (0)`);
  m.setup(`${make}(${pin - 1});`);
  m.loop(`${put}(${pin - 1}, HIGH);\n${put}(${pin - 1}, LOW);`);
  expectDriven(m, pin);
};

const alternatives: Way = (m) => {
  const [pin, other] = [m.pin(), m.pin()];
  const name = m.name('upper');
  const condition = m.random.pick([
    ['#ifdef __AVR_ATmega328P__', true],
    ['#if defined(__AVR_ATmega2560__)', false],
    ['#ifndef ARDUINO_ARCH_AVR', false],
    ['#if ARDUINO >= 100', true],
    ['#if F_CPU == 16000000L && !defined(NOT_HERE)', true],
  ] as const);
  const [first, second] = condition[1] ? [pin, other] : [other, pin];
  m.global(`${condition[0]}\n#define ${name} ${first}\n#else\n#define ${name} ${second}\n#endif`);
  drive(m, pin, name);
};

const conditional: Way = (m) => {
  const [pin, key] = [m.pin(), m.pin()];
  const name = m.name();
  m.global(`const int ${name} = ${pin};`);
  m.setup(`pinMode(${name}, OUTPUT);\npinMode(${key}, INPUT_PULLUP);`);
  m.loop(`if (digitalRead(${key}) == LOW) digitalWrite(${name}, HIGH);\nelse digitalWrite(${name}, LOW);`);
  m.expect(`mode ${key} input-pullup`);
  m.expect(`read ${key}`);
  expectDriven(m, pin);
};

const notCalled: Way = (m) => {
  const [pin, never] = [m.pin(), m.pin()];
  m.global(`void ${m.name()}() { pinMode(${never}, OUTPUT); digitalWrite(${never}, HIGH); }`);
  m.global(`// pinMode(${never}, OUTPUT);`);
  drive(m, pin, String(pin));
};

const shadowed: Way = (m) => {
  const [pin, inner] = m.pins(2) as readonly [number, number];
  const name = m.name();
  m.global(`int ${name} = ${pin};`);
  m.setup(`{ int ${name} = ${inner}; pinMode(${name}, OUTPUT); }`);
  m.loop(`{ const byte ${name} = ${inner}; digitalWrite(${name}, HIGH); digitalWrite(${name}, LOW); }`);
  expectDriven(m, inner);
  drive(m, pin, name);
};

export const WAYS: readonly Way[] = [
  ...[literal, named, macro, macroChain, constant, unassigned, assignedInSetup, enumeration, space],
  ...[arrayLoop, arrayRange, progmem, twoDimensions, throughCalls, returned, functionMacro, alternatives],
  ...[conditional, notCalled, shadowed],
  ...OBJECT_WAYS,
];
