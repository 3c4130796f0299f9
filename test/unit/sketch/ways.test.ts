/** Further ways of the language that carry pins: packs, lists by macros, copies, pointers, operators, narrowing. */
import { describe } from 'vitest';
import { check, inLoop, inSetup } from './rows';

describe('any number of arguments', () => {
  check([
    {
      about: 'one by one',
      text: inSetup(
        'template <typename P> void low(P p) { digitalWrite(p, LOW); }\ntemplate <typename P, typename... R> void low(P p, R... rest) { digitalWrite(p, LOW); low(rest...); }',
        'low(5, 6);',
      ),
      uses: ['setup low digitalWrite 5 = 0', 'setup low low digitalWrite 6 = 0'],
    },
    {
      about: 'folded, and in a list',
      text: inSetup(
        'template <typename... P> void all(P... pins) { (pinMode(pins, OUTPUT), ...); for (auto one : {pins...}) digitalWrite(one, HIGH); tone(9, sizeof...(pins)); }',
        'all(3, 4);',
      ),
      uses: [
        'setup all pinMode 3 = 1 output',
        'setup all pinMode 4 = 1 output',
        'setup all digitalWrite 3,4 = 1',
        'setup all tone 9 = 2 output',
      ],
    },
    {
      about: 'numbers in angle brackets',
      text: inSetup(
        'template <uint8_t... Pins> struct Row { static void begin() { const uint8_t list[] = {Pins...}; for (uint8_t p : list) pinMode(p, INPUT); } };',
        'Row<A0, 7>::begin();',
      ),
      uses: ['setup Row::begin pinMode 7,14 = 0 input'],
    },
    {
      about: 'objects by reference',
      text: inSetup(
        'struct Lamp { int pin; void begin() { pinMode(pin, OUTPUT); pin = 13; } };\ntemplate <typename... L> void begin(L &...lamps) { int done[] = {(lamps.begin(), 0)...}; }\nLamp a{3}, b{4};',
        'begin(a, b); digitalWrite(a.pin, HIGH);',
      ),
      uses: ['setup begin Lamp::begin pinMode 3,4 = 1 output', 'setup digitalWrite 13 = 1'],
    },
  ]);
});

const list = '#define LAMPS(X) X(bow, 8) X(mast, 9)\n#define ENTRY(name, pin) name,\n';

describe('lists by macros', () => {
  check([
    {
      about: 'entries of an enumeration, with and without a name',
      text: inSetup(
        `${list}enum Lamp { LAMPS(ENTRY) count };\n#define SAME(name, pin) name##Pin = pin,\nenum { LAMPS(SAME) };`,
        'digitalWrite(bow + 4, HIGH); digitalWrite(count, LOW); pinMode(mastPin, OUTPUT);',
      ),
      uses: ['setup digitalWrite 4 = 1', 'setup digitalWrite 2 = 0', 'setup pinMode 9 = 1 output'],
    },
    {
      about: 'entries of a table that say where they go',
      text: inSetup(
        `${list}enum Lamp { LAMPS(ENTRY) count };\n#define AT(name, pin) [name] = pin,\nconst byte pins[count] = { LAMPS(AT) };`,
        'pinMode(pins[mast], OUTPUT);',
      ),
      uses: ['setup pinMode 9 = 1 output'],
    },
    {
      about: 'functions with parameters',
      text: inSetup(
        `${list}#define SETTER(name, pin) static void set_##name(uint8_t v) { digitalWrite(pin, v); }\nLAMPS(SETTER)`,
        'set_mast(HIGH);',
      ),
      uses: ['setup set_mast digitalWrite 9 = 1'],
    },
  ]);
});

describe('what reads as a prototype', () => {
  const lamp =
    'const byte pins[] = {3, 5};\nstruct Row { int pin; byte size; Row(const byte *list, byte count = 1) : pin(list[0]), size(count) {} };\n';
  check([
    {
      about: 'is an object where its brackets hold values',
      text: inSetup(
        `${lamp}Row row(pins, sizeof(pins));\nint first(byte a);\nRow make(const byte *list);\nRow make(const byte *list) { return Row(list, 9); }`,
        'pinMode(row.pin, OUTPUT); digitalWrite(row.size, HIGH); Row one = make(pins + 1); digitalWrite(one.pin, LOW);',
      ),
      uses: ['setup pinMode 3 = 1 output', 'setup digitalWrite 2 = 1', 'setup digitalWrite 5 = 0'],
    },
  ]);
});

describe('objects', () => {
  const lamp = 'struct Lamp { int pin; byte more[2]; };\nLamp a = {3, {4, 5}}, b;\n';
  check([
    {
      about: 'are copied, with their arrays',
      text: inSetup(
        lamp,
        'b = a; Lamp c = a; auto d = a; a.pin = 6; a.more[0] = 7; pinMode(b.pin, OUTPUT); pinMode(c.more[0], OUTPUT); pinMode(d.pin, OUTPUT); pinMode(a.pin, OUTPUT);',
      ),
      uses: [
        'setup pinMode 3 = 1 output',
        'setup pinMode 4 = 1 output',
        'setup pinMode 3 = 1 output',
        'setup pinMode 6 = 1 output',
      ],
    },
    {
      about: 'are copied by a loop over values',
      text: inSetup(lamp, 'Lamp row[] = {a}; for (Lamp one : row) one.pin = 9; pinMode(row[0].pin, OUTPUT);'),
      uses: ['setup pinMode 3 = 1 output'],
    },
    {
      about: 'may be one of two',
      text: inSetup(
        `${lamp}`,
        'b.pin = 8; Lamp c; if (digitalRead(2)) c = a; else c = b; pinMode(c.pin, OUTPUT);',
      ),
      uses: ['setup digitalRead 2', 'setup pinMode 3,8 = 1 output perhaps'],
    },
    {
      about: 'members of a union are not known one by the other',
      text: inSetup(
        'union Both { int whole; byte low; } both;',
        'both.whole = 7; digitalWrite(both.low, HIGH);',
      ),
      uses: ['setup digitalWrite ? another member of its union changes it = 1'],
    },
    {
      about: 'arrays that start in a constructor, and types inside a struct',
      text: inSetup(
        'struct View { byte pins[2]; View(byte a, byte b) : pins{a, b} {} };\nView view(4, 5);\nstruct Key { int note; struct { byte lamp, key; } at; } keys[] = {{60, {7, 8}}};',
        'for (byte p : view.pins) pinMode(p, OUTPUT); pinMode(keys[0].at.key, INPUT);',
      ),
      uses: ['setup pinMode 4,5 = 1 output', 'setup pinMode 8 = 0 input'],
    },
    {
      about: 'operators of a class are calls',
      text: inSetup(
        'struct Out { int pin; Out &operator=(bool v) { digitalWrite(pin, v); return *this; } };\nstruct In { int pin; operator bool() const { return digitalRead(pin) == LOW; } };\nOut out{5}; In in{2};',
        'out = true; out = in; if (in) pinMode(9, OUTPUT);',
      ),
      uses: [
        'setup Out::operator= digitalWrite 5 = 1',
        'setup In::operator bool() const digitalRead 2',
        'setup Out::operator= digitalWrite 5 = 0,1',
        'setup In::operator bool() const digitalRead 2',
        'setup pinMode 9 = 1 output perhaps',
      ],
    },
  ]);
});

describe('pointers', () => {
  check([
    {
      about: 'are compared within an array',
      text: inSetup(
        'const byte pins[] = {4, 6};',
        'for (const byte *p = pins; p < pins + 2; p++) pinMode(*p, OUTPUT);',
      ),
      uses: ['setup pinMode 4,6 = 1 output'],
    },
    {
      about: 'to one of two tables reach both, moved or not',
      text: inSetup(
        'const byte day[] = {2, 3}, night[] = {5, 6};',
        'const byte *list = digitalRead(9) ? day : night; pinMode(*list, OUTPUT); pinMode(list[1], OUTPUT);',
      ),
      uses: [
        'setup digitalRead 9',
        'setup pinMode 2,5 = 1 output perhaps',
        'setup pinMode 2,3,5,6 = 1 output perhaps',
      ],
    },
    {
      about: 'that may be null are no certain truth',
      text: inSetup(
        'int lamp = 4; int *chosen = nullptr;',
        'if (digitalRead(2)) chosen = &lamp; if (chosen) pinMode(*chosen, OUTPUT);',
      ),
      uses: ['setup digitalRead 2', 'setup pinMode 4 = 1 output perhaps'],
    },
    {
      about: 'to functions are compared',
      text: inSetup(
        'void a() { pinMode(3, OUTPUT); }\nvoid b() { pinMode(4, OUTPUT); }\nvoid (*now)() = a;',
        'if (now == a) now = b; now();',
      ),
      uses: ['setup b pinMode 4 = 1 output'],
    },
    {
      about: 'chain objects that put themselves into a list',
      text: inSetup(
        'struct Key { static Key *head; Key *next; int pin; Key(int p) : pin(p) { next = head; head = this; } };\nKey *Key::head = nullptr;\nKey a(2), b(3);',
        'for (Key *k = Key::head; k; k = k->next) pinMode(k->pin, INPUT);',
      ),
      uses: ['setup pinMode 2,3 = 0 input'],
    },
  ]);
});

describe('conditions', () => {
  check([
    {
      about: 'narrow a counter that is a pin',
      text: inLoop('int pin = 3;', 'digitalWrite(pin, HIGH); pin++; if (pin == 6) pin = 3;'),
      uses: ['loop digitalWrite 3,4,5 = 1 perhaps'],
    },
    {
      about: 'bound a number that is typed in',
      text: inSetup(
        '',
        'int pin = Serial.parseInt(); if (pin < 4 || pin > 6) return; digitalWrite(pin, LOW);',
      ),
      uses: ['setup digitalWrite 4,5,6 = 0 perhaps'],
    },
    {
      about: 'do not narrow what a handler changes',
      text: inLoop(
        'volatile int pin = 3;\nvoid tick() { pin = 9; }',
        'attachInterrupt(0, tick, RISING); if (pin == 3) digitalWrite(pin, HIGH);',
      ),
      uses: ['loop attachInterrupt 2 = 3', 'loop digitalWrite ? an interrupt handler changes it = 1 perhaps'],
    },
  ]);
});

describe('loops that are half typed', () => {
  check([
    {
      about: 'let what comes behind them be seen',
      text: inSetup('', 'for (int p = 2; p < 4; p) pinMode(p, OUTPUT); digitalWrite(9, HIGH);'),
      uses: ['setup pinMode 2 = 1 output', 'setup digitalWrite 9 = 1'],
    },
  ]);
});
