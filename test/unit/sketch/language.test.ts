/** Ways of the language that carry pins: inheritance, templates, tables of functions, statics, and which file is read. */
import { describe, expect, it } from 'vitest';
import { read, table } from './reading';
import { check, inSetup } from './rows';

describe('classes', () => {
  check([
    {
      about: 'constructors of a base that are taken over',
      text: inSetup(
        'class Base { public: Base(int p) : pin(p) { pinMode(p, OUTPUT); } int pin; };\nclass Lamp : public Base { public: using Base::Base; void on() { digitalWrite(pin, HIGH); } };\nLamp lamp(6);',
        'lamp.on();',
      ),
      uses: ['setup Base::Base pinMode 6 = 1 output', 'setup Lamp::on digitalWrite 6 = 1'],
    },
    {
      about: 'static members and methods, defined outside',
      text: inSetup(
        'class Bus { public: static const uint8_t clock = 12; static uint8_t data; static void begin() { pinMode(clock, OUTPUT); pinMode(data, OUTPUT); } };\nuint8_t Bus::data = 11;\nBus bus;',
        'Bus::begin(); digitalWrite(Bus::data, LOW); digitalWrite(bus.data, LOW);',
      ),
      uses: [
        'setup Bus::begin pinMode 12 = 1 output',
        'setup Bus::begin pinMode 11 = 1 output',
        'setup digitalWrite 11 = 0',
        'setup digitalWrite 11 = 0',
      ],
    },
    {
      about: 'members that start from others',
      text: inSetup('struct Pins { int a = 2, b = a + 1; } pins;', 'pinMode(pins.b, OUTPUT);'),
      uses: ['setup pinMode 3 = 1 output'],
    },
    {
      about: 'references to other objects, given to the constructor',
      text: inSetup(
        'struct Port { int pin; Port(int p) : pin(p) {} };\nclass View { Port &port; int level; public: View(Port &p, int l = 1) : port(p), level(l) {} void show() { digitalWrite(port.pin, level); } };\nPort a(17), b(18);\nView left(a), right(b, 0);',
        'left.show(); right.show();',
      ),
      uses: ['setup View::show digitalWrite 17 = 1', 'setup View::show digitalWrite 18 = 0'],
    },
    {
      about: 'an object that is returned, as a list and as a copy',
      text: inSetup(
        'struct Pins { int a; int b; };\nPins make() { return {10, A5}; }\nstruct Lamp { int pin; Lamp(int p) : pin(p) {} };\nLamp lampAt(int p) { return Lamp(p); }\nLamp stern(lampAt(6));',
        'Pins pins = make(); pinMode(pins.b, OUTPUT); pinMode(stern.pin, OUTPUT);',
      ),
      uses: ['setup pinMode 19 = 1 output', 'setup pinMode 6 = 1 output'],
    },
    {
      about: 'one of several functions by the types of its arguments',
      text: inSetup(
        'void show(const char *text) { digitalWrite(4, HIGH); }\nvoid show(int pin) { digitalWrite(pin, HIGH); }\nvoid show(float level) { analogWrite(3, level); }',
        'show(9); show("on"); show(2.0f);',
      ),
      uses: [
        'setup show digitalWrite 9 = 1',
        'setup show digitalWrite 4 = 1',
        'setup show analogWrite 3 = 2 output',
      ],
    },
  ]);
});

describe('templates and names', () => {
  check([
    {
      about: 'values in angle brackets, through another name and for static methods',
      text: inSetup(
        'template <int P> struct Out { static void begin() { pinMode(P, OUTPUT); } void on() { digitalWrite(P, HIGH); } };\nusing Red = Out<7>;\ntypedef Out<8> Blue;\nconst int GREEN = 9;\nOut<GREEN> green;',
        'Red::begin(); Blue::begin(); Out<5>::begin(); green.on();',
      ),
      uses: [
        'setup Out::begin pinMode 7 = 1 output',
        'setup Out::begin pinMode 8 = 1 output',
        'setup Out::begin pinMode 5 = 1 output',
        'setup Out::on digitalWrite 9 = 1',
      ],
    },
    {
      about: 'a type in angle brackets, and an array of it',
      text: inSetup(
        'struct Lamp { int pin = 12; void on() { digitalWrite(pin, HIGH); } };\ntemplate <typename T, int N> struct Group { T items[N]; void all() { for (int i = 0; i < N; i++) items[i].on(); } };\nGroup<Lamp, 2> group;',
        'group.all();',
      ),
      uses: ['setup Group::all Lamp::on digitalWrite 12 = 1'],
    },
    {
      about: 'another name of a namespace',
      text: inSetup(
        'namespace board { const int lamp = 13; void on() { digitalWrite(lamp, HIGH); } }\nnamespace b = board;',
        'pinMode(b::lamp, OUTPUT); b::on();',
      ),
      uses: ['setup pinMode 13 = 1 output', 'setup on digitalWrite 13 = 1'],
    },
    {
      about: 'tables of functions, with a name for their type',
      text: inSetup(
        'void a() { digitalWrite(3, HIGH); }\nvoid b() { digitalWrite(4, HIGH); }\ntypedef void (*Action)(void);\nusing Step = void (*)();\nAction actions[] = {a, b};\nconst Step steps[] = {[]() { digitalWrite(5, LOW); }, b};\nbyte at = 1;',
        'actions[0](); steps[0](); actions[at]();',
      ),
      uses: ['setup a digitalWrite 3 = 1', 'setup lambda digitalWrite 5 = 0', 'setup b digitalWrite 4 = 1'],
    },
  ]);
});

describe('arrays and loops', () => {
  check([
    {
      about: 'an entry that is not known does not hide the others',
      text: inSetup(
        'int pins[] = {11, 0, 12};',
        'pins[1] = analogRead(0); for (int i = 0; i < 3; i++) pinMode(pins[i], OUTPUT);',
      ),
      uses: [
        'setup analogRead 14',
        'setup pinMode 11,12 = 1 output',
        'setup pinMode ? it is read from an analog input = 1 output',
      ],
    },
    {
      about: 'fewer values than slots',
      text: inSetup('int pins[3] = {9};', 'for (int pin : pins) pinMode(pin, OUTPUT);'),
      uses: ['setup pinMode 0,9 = 1 output'],
    },
    {
      about: 'a condition that counts',
      text: inSetup('', 'int n = 8; do digitalWrite(n, HIGH); while ((n += 2) <= 12); digitalWrite(n, LOW);'),
      uses: ['setup digitalWrite 8,10,12 = 1', 'setup digitalWrite 14 = 0'],
    },
    {
      about: 'what is filled as bytes is forgotten',
      text: inSetup(
        'struct Frame { byte kind; byte pin; } frame;',
        'port.readBytes((char *)&frame, sizeof frame); if (frame.kind == 1) digitalWrite(frame.pin, HIGH);',
      ),
      uses: ['setup digitalWrite ? `readBytes` may change it = 1 perhaps'],
    },
  ]);
});

describe('which header is read', () => {
  const headers = { 'mega.h': 'const int lamp = 50;', 'uno.h': 'const int lamp = 5;' };
  const use = inSetup('', 'pinMode(lamp, OUTPUT);');
  const one = ['setup pinMode 5 = 1 output'];
  it('not one of a branch that is not compiled', async () => {
    const include = '#ifdef __AVR_ATmega2560__\n#include "mega.h"\n#else\n#include "uno.h"\n#endif\n';
    expect(await table({ 'a.ino': include + use, ...headers })).toEqual(one);
  });
  it('the one that a macro names', async () => {
    expect(await table({ 'a.ino': `#define PINS "uno.h"\n#include PINS\n${use}`, ...headers })).toEqual(one);
  });
  it('the one beside the file that includes it, with either slash', async () => {
    const files = {
      'a.ino': `#include "src\\lamp.h"\n${use}`,
      'pins.h': 'const int lamp = 50;',
      'src/lamp.h': '#include "pins.h"',
      'src/pins.h': 'const int lamp = 5;',
    };
    expect(await table(files)).toEqual(one);
  });
  it('variables of the core are no macros', async () => {
    const text = inSetup('#ifdef A0\nint lamp = 50;\n#else\nint lamp = 5;\n#endif', 'pinMode(lamp, OUTPUT);');
    expect(await table(text)).toEqual(one);
  });
});

describe('headers that nobody describes', () => {
  const of = async (includes: string) =>
    (await read(`${includes}\nvoid setup() {}\nvoid loop() {}\n`)).foreignHeaders;

  it('are told, those of the language, the chip and described libraries left out', async () => {
    expect(
      await of('#include <TideSensor.h>\n#include <avr/io.h>\n#include <math.h>\n#include <Servo.h>'),
    ).toEqual(['TideSensor.h']);
    expect(await of('#include <string.h>\n#include "Arduino.h"')).toBeUndefined();
  });
});
