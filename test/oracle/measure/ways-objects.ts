/** The grammar's part for what has members: structs, classes, templates, tables of functions, and port registers. */
import type { Making } from './generate';

export type Way = (making: Making) => void;

/** The answers of a pin that is made an output and moved up and down. */
export function expectDriven(making: Making, ...pins: readonly number[]): void {
  for (const pin of pins) {
    making.expect(`mode ${pin} output`);
    making.expect(`write ${pin} 0`);
    making.expect(`write ${pin} 1`);
  }
}

const structs: Way = (m) => {
  const pins = m.pins(2);
  const [type, table] = [m.name('type'), m.name()];
  const [a, b] = pins;
  m.global(`struct ${type} { const char *label; byte pin; };`);
  m.global(`const ${type} ${table}[] = {{"one", ${a}}, {"two", ${b}}};`);
  const head = m.random.pick([
    `for (int i = 0; i < 2; i++)`,
    `for (byte i = 0; i < sizeof(${table}) / sizeof(${type}); i++)`,
  ]);
  m.setup(`${head} pinMode(${table}[i].pin, OUTPUT);`);
  m.loop(`${head} {\n  digitalWrite(${table}[i].pin, HIGH);\n  digitalWrite(${table}[i].pin, LOW);\n}`);
  expectDriven(m, ...pins);
};

function classText(type: string, maker: string): string {
  return `class ${type} {
  public:
    ${maker}
    void begin() { pinMode(pin, OUTPUT); }
    void put(bool on) { digitalWrite(pin, on); }
  private:
    byte pin;
};`;
}

const constructed: Way = (m) => {
  const pins = m.pins(2);
  const type = m.name('type');
  const maker = m.random.pick([
    `${type}(byte p) : pin(p) {}`,
    `${type}(byte p) { pin = p; }`,
    `explicit ${type}(int pin) : pin(pin) {}`,
  ]);
  m.global(classText(type, maker));
  for (const pin of pins) {
    const [name, constant] = [m.name(), m.name('upper')];
    m.global(m.random.once(2) ? `#define ${constant} ${pin}` : `const int ${constant} = ${pin};`);
    m.global(m.random.once(2) ? `${type} ${name}(${constant});` : `${type} ${name}{${pin}};`);
    m.setup(`${name}.begin();`);
    m.loop(`${name}.put(true);\n${name}.put(false);`);
  }
  expectDriven(m, ...pins);
};

const begun: Way = (m) => {
  const pin = m.pin();
  const [type, name] = [m.name('type'), m.name()];
  m.global(`struct ${type} {
  int pin;
  void attach(int p) { pin = p; pinMode(pin, OUTPUT); }
  void flash() { digitalWrite(pin, HIGH); digitalWrite(pin, LOW); }
};
${type} ${name};`);
  m.setup(`${name}.attach(${pin});`);
  m.loop(`${name}.flash();`);
  expectDriven(m, pin);
};

const objectArray: Way = (m) => {
  const pins = m.pins(3);
  const [type, name] = [m.name('type'), m.name()];
  m.global(classText(type, `${type}(byte p) : pin(p) {}`));
  m.global(
    `${type} ${name}[] = {${pins.map((pin) => (m.random.once(2) ? `${type}(${pin})` : `{${pin}}`)).join(', ')}};`,
  );
  m.setup(`for (${type} &one : ${name}) one.begin();`);
  m.loop(`for (int i = 0; i < 3; i++) { ${name}[i].put(1); ${name}[i].put(0); }`);
  expectDriven(m, ...pins);
};

const inherited: Way = (m) => {
  const pin = m.pin();
  const [base, type, name] = [m.name('type'), m.name('type'), m.name()];
  m.global(`class ${base} {
  public:
    ${base}(byte p) : pin(p) {}
    void begin() { pinMode(pin, OUTPUT); }
  protected:
    byte pin;
};
class ${type} : public ${base} {
  public:
    ${type}(byte p) : ${base}(p) {}
    void flash() { digitalWrite(pin, HIGH); digitalWrite(pin, LOW); }
};
${type} ${name}(${pin});`);
  m.setup(`${name}.begin();`);
  m.loop(`${name}.flash();`);
  expectDriven(m, pin);
};

const template: Way = (m) => {
  const pin = m.pin();
  const [type, name] = [m.name('type'), m.name()];
  m.global(`template <byte PIN> class ${type} {
  public:
    void begin() { pinMode(PIN, OUTPUT); }
    void put(bool on) { digitalWrite(PIN, on ? HIGH : LOW); }
};
${type}<${pin}> ${name};`);
  m.setup(`${name}.begin();`);
  m.loop(`${name}.put(true);\n${name}.put(false);`);
  expectDriven(m, pin);
};

const functionTable: Way = (m) => {
  const pins = m.pins(2);
  const [table, first, second, type] = [m.name(), m.name(), m.name(), m.name('type')];
  for (const [name, pin] of [
    [first, pins[0]],
    [second, pins[1]],
  ] as const) {
    m.global(`void ${name}() { digitalWrite(${pin}, HIGH); digitalWrite(${pin}, LOW); }`);
    m.setup(`pinMode(${pin}, OUTPUT);`);
  }
  m.global(
    m.random.once(2)
      ? `void (*${table}[])() = {${first}, ${second}};`
      : `typedef void (*${type})();\n${type} ${table}[] = {${first}, ${second}};`,
  );
  m.loop(`for (byte i = 0; i < 2; i++) ${table}[i]();`);
  expectDriven(m, ...pins);
};

const lambda: Way = (m) => {
  const pins = m.pins(2);
  const name = m.name();
  m.setup(
    `auto ${name} = [](int pin) { pinMode(pin, OUTPUT); };\n${pins.map((pin) => `${name}(${pin});`).join('\n')}`,
  );
  m.loop(
    `auto ${name} = [](int pin) { digitalWrite(pin, HIGH); digitalWrite(pin, LOW); };\n${pins.map((pin) => `${name}(${pin});`).join('\n')}`,
  );
  expectDriven(m, ...pins);
};

const registers: Way = (m) => {
  const pin = m.pin();
  const [letter, bit] = pin < 8 ? ['D', pin] : pin < 14 ? ['B', pin - 8] : ['C', pin - 14];
  const mask = m.random.pick([
    `(1 << ${bit})`,
    `_BV(${bit})`,
    `_BV(P${letter}${bit})`,
    `bit(${bit})`,
    `0x${(1 << bit).toString(16)}`,
  ]);
  m.setup(m.random.once(2) ? `DDR${letter} |= ${mask};` : `bitSet(DDR${letter}, ${bit});`);
  m.loop(`PORT${letter} |= ${mask};`);
  m.loop(m.random.once(2) ? `PORT${letter} &= ~${mask};` : `bitClear(PORT${letter}, ${bit});`);
  expectDriven(m, pin);
};

export const OBJECT_WAYS: readonly Way[] = [
  ...[structs, constructed, begun, objectArray, inherited, template, functionTable, lambda, registers],
];
