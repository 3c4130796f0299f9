/** Pins that come through functions, templates and objects. */
import { describe } from 'vitest';
import { check, inLoop, inSetup } from './rows';

describe('functions', () => {
  check([
    {
      about: 'each call site is a path of its own',
      text: inSetup(
        'void lamp(int pin, int level = HIGH) { digitalWrite(pin, level); }',
        'lamp(3); lamp(4, LOW);',
      ),
      uses: ['setup lamp digitalWrite 3 = 1', 'setup lamp digitalWrite 4 = 0'],
    },
    {
      about: 'functions nobody calls do nothing',
      text: inSetup('void never() { digitalWrite(3, HIGH); }', 'digitalWrite(4, HIGH);'),
      uses: ['setup digitalWrite 4 = 1'],
    },
    {
      about: 'a default in the prototype',
      text: inSetup(
        'void lamp(int pin, int level = LOW);\nvoid lamp(int pin, int level) { digitalWrite(pin, level); }',
        'lamp(3);',
      ),
      uses: ['setup lamp digitalWrite 3 = 0'],
    },
    {
      about: 'a reference',
      text: inSetup('void next(int &pin) { pin++; }', 'int p = 3; next(p); digitalWrite(p, HIGH);'),
      uses: ['setup digitalWrite 4 = 1'],
    },
    {
      about: 'a pointer',
      text: inSetup('void next(int *pin) { *pin += 2; }', 'int p = 3; next(&p); digitalWrite(p, HIGH);'),
      uses: ['setup digitalWrite 5 = 1'],
    },
    {
      about: 'overloads by the number of arguments',
      text: inSetup(
        'void f(int a) { digitalWrite(a, 0); }\nvoid f(int a, int b) { digitalWrite(b, 1); }',
        'f(3); f(3, 4);',
      ),
      uses: ['setup f digitalWrite 3 = 0', 'setup f digitalWrite 4 = 1'],
    },
    {
      about: 'a returned pin',
      text: inSetup('int pinOf(int station) { return station * 2 + 1; }', 'digitalWrite(pinOf(3), HIGH);'),
      uses: ['setup digitalWrite 7 = 1'],
    },
    {
      about: 'recursion that ends',
      text: inSetup(
        'void down(int pin) { if (pin < 3) return; digitalWrite(pin, HIGH); down(pin - 1); }',
        'down(5);',
      ),
      uses: [
        'setup down digitalWrite 5 = 1',
        'setup down down digitalWrite 4 = 1',
        'setup down down down digitalWrite 3 = 1',
      ],
    },
    {
      about: 'a lambda',
      text: inSetup('', 'auto put = [](int pin) { digitalWrite(pin, HIGH); }; put(4);'),
      uses: ['setup lambda digitalWrite 4 = 1'],
    },
    {
      about: 'a pointer to a function',
      text: inSetup('void on() { digitalWrite(4, HIGH); }\nvoid (*act)() = on;', 'act();'),
      uses: ['setup on digitalWrite 4 = 1'],
    },
    {
      about: 'a table of functions',
      text: inSetup(
        'void a() { digitalWrite(4, HIGH); }\nvoid b() { digitalWrite(5, HIGH); }\nvoid (*acts[])() = {a, b};',
        'for (int i = 0; i < 2; i++) acts[i]();',
      ),
      uses: ['setup a digitalWrite 4 = 1', 'setup b digitalWrite 5 = 1'],
    },
    {
      about: 'a template',
      text: inSetup('template <int PIN> void on() { digitalWrite(PIN, HIGH); }', 'on<6>();'),
      uses: ['setup on digitalWrite 6 = 1'],
    },
  ]);
});

describe('what larger sketches do', () => {
  check([
    {
      about: 'a template that takes the length of an array',
      text: inSetup(
        'const int row[] = {3, 4};\ntemplate <size_t N> void all(const int (&pins)[N]) { for (size_t i = 0; i < N; i++) pinMode(pins[i], OUTPUT); }',
        'all(row);',
      ),
      uses: ['setup all pinMode 3,4 = 1 output'],
    },
    {
      about: 'using namespace',
      text: inSetup(
        'namespace hw { namespace pins { const int horn = 4; } void beep() { tone(pins::horn, 440); } }\nusing namespace hw;',
        'beep(); pinMode(pins::horn, OUTPUT);',
      ),
      uses: ['setup beep tone 4 = 440 output', 'setup pinMode 4 = 1 output'],
    },
    {
      about: 'a table of pointers to objects',
      text: inSetup(
        'struct L { byte pin; void go() { digitalWrite(pin, HIGH); } };\nL a = {3}, b = {4};\nL *all[] = {&a, &b};',
        'for (L *one : all) one->go();',
      ),
      uses: ['setup L::go digitalWrite 3,4 = 1'],
    },
    {
      about: 'a state machine',
      text: inLoop(
        'enum State { IDLE, RUN, STOP };\nState state = IDLE;',
        'switch (state) { case IDLE: if (digitalRead(2)) state = RUN; break; case RUN: digitalWrite(3, HIGH); state = STOP; break; case STOP: digitalWrite(3, LOW); state = IDLE; break; }',
      ),
      uses: ['loop digitalRead 2', 'loop digitalWrite 3 = 1 perhaps', 'loop digitalWrite 3 = 0 perhaps'],
    },
  ]);
});

describe('objects', () => {
  const probe =
    'class Probe {\n public:\n  Probe(byte pin, bool pull = true) : pin_(pin) { pull_ = pull; }\n  void begin();\n  bool on() const { return digitalRead(pin_) == LOW; }\n private:\n  const byte pin_;\n  bool pull_;\n};\nvoid Probe::begin() { pinMode(pin_, pull_ ? INPUT_PULLUP : INPUT); }\n';
  check([
    {
      about: 'a servo',
      text: inSetup('Servo gate;', 'gate.attach(9);'),
      uses: ['setup Servo.attach 9 output'],
    },
    {
      about: 'an array of servos',
      text: inSetup(
        'Servo gates[2];\nconst int pins[] = {9, 10};',
        'for (int i = 0; i < 2; i++) gates[i].attach(pins[i]);',
      ),
      uses: ['setup Servo.attach 9,10 output'],
    },
    {
      about: 'members of a class through its constructor',
      text: inSetup(`${probe}Probe left(4);\nProbe right(5, false);`, 'left.begin(); right.begin();'),
      uses: ['setup Probe::begin pinMode 4 = 2 input-pullup', 'setup Probe::begin pinMode 5 = 0 input'],
    },
    {
      about: 'an object that reads as a prototype',
      text: inSetup(
        `#define PIN 4\nconst bool PULL = true;\n${probe}Probe left(PIN, PULL);`,
        'left.begin();',
      ),
      uses: ['setup Probe::begin pinMode 4 = 2 input-pullup'],
    },
    {
      about: 'an array of objects',
      text: inSetup(`${probe}Probe all[] = {Probe(4), Probe(5)};`, 'for (auto &one : all) one.begin();'),
      uses: ['setup Probe::begin pinMode 4,5 = 2 input-pullup'],
    },
    {
      about: 'an object behind a pointer',
      text: inSetup(
        `${probe}Probe left(4);\nvoid start(Probe *one) { one->begin(); }`,
        'start(&left); Probe *other = new Probe(6); other->begin();',
      ),
      uses: [
        'setup start Probe::begin pinMode 4 = 2 input-pullup',
        'setup Probe::begin pinMode 6 = 2 input-pullup',
      ],
    },
    {
      about: 'begin(pin)',
      text: inSetup(
        'struct Lamp { int pin; void begin(int p) { pin = p; pinMode(pin, OUTPUT); } void on() { digitalWrite(pin, HIGH); } };\nLamp a, b;',
        'a.begin(3); b.begin(4); a.on(); b.on();',
      ),
      uses: [
        'setup Lamp::begin pinMode 3 = 1 output',
        'setup Lamp::begin pinMode 4 = 1 output',
        'setup Lamp::on digitalWrite 3 = 1',
        'setup Lamp::on digitalWrite 4 = 1',
      ],
    },
    {
      about: 'a constructor that works the pin',
      text: inSetup('struct Lamp { Lamp(int pin) { pinMode(pin, OUTPUT); } };\nLamp a(3);', ''),
      uses: ['setup Lamp::Lamp pinMode 3 = 1 output'],
    },
    {
      about: 'a base class and a virtual method',
      text: inSetup(
        'struct Base { int pin; Base(int p) : pin(p) {} virtual void go() { digitalWrite(pin, LOW); } void run() { go(); } };\nstruct Lamp : public Base { Lamp(int p) : Base(p) {} void go() override { digitalWrite(pin, HIGH); } };\nLamp a(3);\nBase b(4);',
        'a.run(); b.run();',
      ),
      uses: ['setup Base::run Lamp::go digitalWrite 3 = 1', 'setup Base::run Base::go digitalWrite 4 = 0'],
    },
    {
      about: 'a template class',
      text: inSetup(
        'template <byte PIN> struct Lamp { void on() { digitalWrite(PIN, HIGH); } };\nLamp<3> a;\nLamp<4> b;',
        'a.on(); b.on();',
      ),
      uses: ['setup Lamp::on digitalWrite 3 = 1', 'setup Lamp::on digitalWrite 4 = 1'],
    },
    {
      about: 'a constant of the class',
      text: inSetup(
        'struct Lamp { static const int PIN = 8; enum { OTHER = 9 }; void on() { digitalWrite(PIN, HIGH); digitalWrite(OTHER, LOW); } };\nLamp a;',
        'a.on(); digitalWrite(Lamp::PIN, LOW);',
      ),
      uses: [
        'setup Lamp::on digitalWrite 8 = 1',
        'setup Lamp::on digitalWrite 9 = 0',
        'setup digitalWrite 8 = 0',
      ],
    },
    {
      about: 'an object inside an object',
      text: inSetup(
        `${probe}struct Desk { Probe probe; Desk(int p) : probe(p) {} void begin() { probe.begin(); } };\nDesk desk(7);`,
        'desk.begin();',
      ),
      uses: ['setup Desk::begin Probe::begin pinMode 7 = 2 input-pullup'],
    },
  ]);
});
