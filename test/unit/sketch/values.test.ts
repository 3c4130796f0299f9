/** From text to pin uses: each row is a style in which sketches name their pins. */
import { describe, expect, it } from 'vitest';
import { table } from './reading';

interface Row {
  readonly about: string;
  readonly text: string;
  readonly uses: readonly string[];
}

/** Text of a whole sketch out of globals and the body of setup(). */
const inSetup = (globals: string, body: string) => `${globals}\nvoid setup() {\n${body}\n}\nvoid loop() {}\n`;
const inLoop = (globals: string, body: string) => `${globals}\nvoid setup() {}\nvoid loop() {\n${body}\n}\n`;

function check(rows: readonly Row[]): void {
  for (const { about, text, uses } of rows) {
    it(about, async () => {
      expect(await table(text)).toEqual(uses);
    });
  }
}

describe('names and numbers', () => {
  const out = (pin: string | number) => [`setup pinMode ${pin} = 1 output`];
  check([
    { about: 'a literal', text: inSetup('', 'pinMode(7, OUTPUT);'), uses: out(7) },
    { about: 'hexadecimal', text: inSetup('', 'pinMode(0x0B, OUTPUT);'), uses: out(11) },
    { about: 'binary', text: inSetup('', 'pinMode(0b101, OUTPUT);'), uses: out(5) },
    { about: 'a binary name', text: inSetup('', 'pinMode(B0101, OUTPUT);'), uses: out(5) },
    { about: 'octal', text: inSetup('', 'pinMode(012, OUTPUT);'), uses: out(10) },
    { about: 'a suffix and a separator', text: inSetup('', "pinMode(1'2UL, OUTPUT);"), uses: out(12) },
    { about: 'a character', text: inSetup('', "pinMode('\\n', OUTPUT);"), uses: out(10) },
    { about: 'a name of the board', text: inSetup('', 'pinMode(LED_BUILTIN, OUTPUT);'), uses: out(13) },
    { about: 'an analogue name', text: inSetup('', 'pinMode(A2, OUTPUT);'), uses: out(16) },
    { about: 'a macro', text: inSetup('#define LED 9', 'pinMode(LED, OUTPUT);'), uses: out(9) },
    {
      about: 'a macro in brackets',
      text: inSetup('#define LED (A0 + 1)', 'pinMode(LED, OUTPUT);'),
      uses: out(15),
    },
    {
      about: 'a macro of a macro',
      text: inSetup('#define A_ 4\n#define B_ A_', 'pinMode(B_, OUTPUT);'),
      uses: out(4),
    },
    {
      about: 'a macro that is given another meaning: each use sees the one in front of it',
      text: '#define P 3\nvoid first() { pinMode(P, OUTPUT); }\n#undef P\n#define P 4\nvoid setup() { first(); pinMode(P, OUTPUT); }',
      uses: ['setup first pinMode 3 = 1 output', 'setup pinMode 4 = 1 output'],
    },
    { about: 'const', text: inSetup('const int led = 6;', 'pinMode(led, OUTPUT);'), uses: out(6) },
    { about: 'constexpr', text: inSetup('constexpr uint8_t led{6};', 'pinMode(led, OUTPUT);'), uses: out(6) },
    {
      about: 'static const',
      text: inSetup('static const byte led = 6;', 'pinMode(led, OUTPUT);'),
      uses: out(6),
    },
    { about: 'a plain global', text: inSetup('int led = 6;', 'pinMode(led, OUTPUT);'), uses: out(6) },
    {
      about: 'a global in round brackets',
      text: inSetup('int led(6);', 'pinMode(led, OUTPUT);'),
      uses: out(6),
    },
    {
      about: 'several in one line',
      text: inSetup('int a = 2, b = a + 3;', 'pinMode(b, OUTPUT);'),
      uses: out(5),
    },
    {
      about: 'an enumeration',
      text: inSetup('enum { one = 4, two, three };', 'pinMode(three, OUTPUT);'),
      uses: out(6),
    },
    {
      about: 'a scoped enumeration',
      text: inSetup('enum class Pin : byte { a = 4, b };', 'pinMode((int)Pin::b, OUTPUT);'),
      uses: out(5),
    },
    {
      about: 'static_cast',
      text: inSetup('enum class Pin { a = 4 };', 'pinMode(static_cast<uint8_t>(Pin::a), OUTPUT);'),
      uses: out(4),
    },
    {
      about: 'a namespace',
      text: inSetup('namespace pins { const int led = 3; }', 'pinMode(pins::led, OUTPUT);'),
      uses: out(3),
    },
    { about: 'a local', text: inSetup('', 'const int led = 3; pinMode(led, OUTPUT);'), uses: out(3) },
    {
      about: 'a local hides a global',
      text: inSetup('int led = 9;', 'int led = 3; pinMode(led, OUTPUT);'),
      uses: out(3),
    },
    {
      about: 'a block ends',
      text: inSetup('int led = 9;', '{ int led = 3; } pinMode(led, OUTPUT);'),
      uses: out(9),
    },
    {
      about: 'a global that setup() changes',
      text: inSetup('int led = 9;', 'led = 3; pinMode(led, OUTPUT);'),
      uses: out(3),
    },
    {
      about: 'a struct',
      text: inSetup('struct { int lamp = 4; byte horn = 5; } pins;', 'pinMode(pins.horn, OUTPUT);'),
      uses: out(5),
    },
    {
      about: 'designated fields',
      text: inSetup(
        'struct Pins { int lamp; int horn; };\nPins pins = { .lamp = 4, .horn = 5 };',
        'pinMode(pins.horn, OUTPUT);',
      ),
      uses: out(5),
    },
    {
      about: 'a name nobody declares',
      text: inSetup('', 'pinMode(lamp, OUTPUT);'),
      uses: out('? `lamp` is not defined in the sketch'),
    },
    {
      about: 'a function-like macro',
      text: inSetup('#define ON(p) digitalWrite((p), HIGH)', 'ON(5);'),
      uses: ['setup digitalWrite 5 = 1'],
    },
    {
      about: 'a macro of several statements',
      text: inSetup(
        '#define BLINK(p) do { digitalWrite(p, HIGH); delay(9); digitalWrite(p, LOW); } while (0)',
        'BLINK(5);',
      ),
      uses: ['setup digitalWrite 5 = 1', 'setup digitalWrite 5 = 0'],
    },
    {
      about: 'a macro for a call',
      text: inSetup('#define LAMP_ON digitalWrite(8, HIGH)', 'LAMP_ON;'),
      uses: ['setup digitalWrite 8 = 1'],
    },
    {
      about: 'a macro for a function',
      text: inSetup('#define put digitalWrite', 'put(8, HIGH);'),
      uses: ['setup digitalWrite 8 = 1'],
    },
  ]);
});

describe('arithmetic', () => {
  const pin = (expression: string, globals = '') => inSetup(globals, `pinMode(${expression}, OUTPUT);`);
  const rows: readonly [string, string | number][] = [
    ['2 + 3 * 2', 8],
    ['(2 + 3) * 2', 10],
    ['7 / 2', 3],
    ['-7 / 2 + 10', 7],
    ['17 % 5', 2],
    ['1 << 3', 8],
    ['0x1F & ~0x0F', 16],
    ['5 | 2', 7],
    ['5 ^ 1', 4],
    ['3 > 2 ? 4 : 5', 4],
    ['!0 + 2', 3],
    ['3 == 3 && 2 < 1', 0],
    ['(byte)257', 1],
    ['uint8_t(258)', 2],
    ['(int)3.9', 3],
    ['300 * 300', 24464],
    ['300L * 300L - 89990', 10],
    ['min(3, 9)', 3],
    ['max(3, 9)', 9],
    ['constrain(12, 2, 9)', 9],
    ['map(5, 0, 10, 2, 12)', 7],
    ['abs(-4)', 4],
    ['bit(3)', 8],
    ['_BV(2)', 4],
    ['sizeof(long)', 4],
    ['sizeof(int)', 2],
    ['1 / 0', '? it is divided by zero'],
    ['analogRead(A0) % 2', '? '],
  ];
  for (const [expression, value] of rows.slice(0, -1)) {
    it(expression, async () => {
      expect(await table(pin(expression))).toEqual([`setup pinMode ${value} = 1 output`]);
    });
  }
  it('a byte wraps', async () => {
    expect(await table(inSetup('byte b = 250;', 'b += 10; pinMode(b, OUTPUT);'))).toEqual([
      'setup pinMode 4 = 1 output',
    ]);
  });
  it('a remainder of an unknown has few values, a mask too', async () => {
    const text = inSetup('', 'pinMode(analogRead(A0) % 2 + 4, OUTPUT); pinMode(analogRead(A0) & 3, OUTPUT);');
    expect(await table(text)).toEqual([
      'setup analogRead 14',
      'setup pinMode 4,5 = 1 output perhaps',
      'setup analogRead 14',
      'setup pinMode 0,1,2,3 = 1 output perhaps',
    ]);
  });
  it('what is read from outside is said to be', async () => {
    const text = inSetup(
      '',
      'pinMode(analogRead(A0), OUTPUT); pinMode(Serial.read(), OUTPUT); pinMode(millis(), OUTPUT);',
    );
    expect(await table(text)).toEqual([
      'setup analogRead 14',
      'setup pinMode ? it is read from an analog input = 1 output',
      'setup pinMode ? it is read from the serial port = 1 output',
      'setup pinMode ? it is the time = 1 output',
    ]);
  });
});

describe('arrays and loops', () => {
  check([
    {
      about: 'a loop over an array by sizeof',
      text: inSetup(
        'const int pins[] = {3, 5, 6};',
        'for (unsigned i = 0; i < sizeof(pins) / sizeof(pins[0]); i++) pinMode(pins[i], OUTPUT);',
      ),
      uses: ['setup pinMode 3,5,6 = 1 output'],
    },
    {
      about: 'a loop over the pins themselves',
      text: inSetup('', 'for (int pin = 2; pin <= 5; pin++) { pinMode(pin, OUTPUT); }'),
      uses: ['setup pinMode 2,3,4,5 = 1 output'],
    },
    {
      about: 'a range loop',
      text: inSetup('byte pins[] = {8, 9};', 'for (byte pin : pins) pinMode(pin, OUTPUT);'),
      uses: ['setup pinMode 8,9 = 1 output'],
    },
    {
      about: 'a range loop over a list',
      text: inSetup('', 'for (auto pin : {8, 9}) pinMode(pin, OUTPUT);'),
      uses: ['setup pinMode 8,9 = 1 output'],
    },
    {
      about: 'while and do',
      text: inSetup(
        '',
        'int i = 0; while (i < 2) { pinMode(i + 4, OUTPUT); i++; } do { digitalWrite(i, LOW); i--; } while (i > 0);',
      ),
      uses: ['setup pinMode 4,5 = 1 output', 'setup digitalWrite 1,2 = 0'],
    },
    {
      about: 'two dimensions',
      text: inSetup(
        'const byte grid[2][3] = {{2, 3, 4}, {5, 6, 7}};',
        'for (int r = 0; r < 2; r++) for (int c = 0; c < 3; c++) if (c != 1) pinMode(grid[r][c], OUTPUT);',
      ),
      uses: ['setup pinMode 2,4,5,7 = 1 output'],
    },
    {
      about: 'an array of structs',
      text: inSetup(
        'struct Lamp { int pin; bool on; };\nLamp lamps[] = {{3, true}, {4, false}};',
        'for (auto &lamp : lamps) { pinMode(lamp.pin, OUTPUT); digitalWrite(lamp.pin, lamp.on); }',
      ),
      uses: ['setup pinMode 3,4 = 1 output', 'setup digitalWrite 3,4 = 0,1'],
    },
    {
      about: 'break and continue',
      text: inSetup(
        '',
        'for (int i = 2; i < 9; i++) { if (i == 3) continue; if (i == 6) break; pinMode(i, OUTPUT); }',
      ),
      uses: ['setup pinMode 2,4,5 = 1 output'],
    },
    {
      about: 'an unknown index means any entry',
      text: inSetup('int pins[] = {3, 5};', 'digitalWrite(pins[analogRead(A0)], HIGH);'),
      uses: ['setup analogRead 14', 'setup digitalWrite 3,5 = 1 perhaps'],
    },
    {
      about: 'an entry that is assigned',
      text: inSetup(
        'int pins[3];',
        'pins[0] = 4; pins[1] = 5; pins[2] = pins[0] + 4; for (int p : pins) pinMode(p, OUTPUT);',
      ),
      uses: ['setup pinMode 4,5,8 = 1 output'],
    },
    {
      about: 'an index outside',
      text: inSetup('int pins[] = {3, 5};', 'digitalWrite(pins[2], HIGH);'),
      uses: ['setup digitalWrite ? the index 2 lies outside `pins` = 1'],
    },
    {
      about: 'an array as an argument',
      text: inSetup(
        'const byte row[] = {3, 5};\nvoid all(const byte *pins, int n) { for (int i = 0; i < n; i++) pinMode(pins[i], OUTPUT); }',
        'all(row, 2);',
      ),
      uses: ['setup all pinMode 3,5 = 1 output'],
    },
    {
      about: 'a pointer that moves',
      text: inSetup(
        'const byte row[] = {3, 5, 7};',
        'for (const byte *p = row; *p != 7; p++) pinMode(*p, OUTPUT);',
      ),
      uses: ['setup pinMode 3,5 = 1 output'],
    },
    {
      about: 'a table in flash',
      text: inSetup(
        'const byte row[] PROGMEM = {3, 5};',
        'for (int i = 0; i < 2; i++) pinMode(pgm_read_byte(&row[i]), OUTPUT);',
      ),
      uses: ['setup pinMode 3,5 = 1 output'],
    },
    {
      about: 'a list in a macro',
      text: inSetup(
        '#define ROW {3, 5}\nint row[] = ROW;',
        'for (int i = 0; i < 2; i++) pinMode(row[i], OUTPUT);',
      ),
      uses: ['setup pinMode 3,5 = 1 output'],
    },
    {
      about: 'a loop of unknown length forgets its counter',
      text: inSetup('', 'int i = 3; while (digitalRead(2)) { i++; } pinMode(i, OUTPUT);'),
      uses: ['setup digitalRead 2', 'setup pinMode ? `i` changes in a loop = 1 output'],
    },
  ]);
});

describe('branches', () => {
  check([
    {
      about: 'an undecided branch is perhaps',
      text: inLoop(
        '',
        'if (digitalRead(2)) digitalWrite(3, HIGH); else digitalWrite(4, HIGH); digitalWrite(5, HIGH);',
      ),
      uses: [
        'loop digitalRead 2',
        'loop digitalWrite 3 = 1 perhaps',
        'loop digitalWrite 4 = 1 perhaps',
        'loop digitalWrite 5 = 1',
      ],
    },
    {
      about: 'a decided branch is not',
      text: inLoop(
        'const bool fitted = true;',
        'if (fitted) digitalWrite(3, HIGH); else digitalWrite(4, HIGH);',
      ),
      uses: ['loop digitalWrite 3 = 1'],
    },
    {
      about: 'values are joined after a branch',
      text: inLoop('', 'int p = 3; if (digitalRead(2)) p = 4; digitalWrite(p, HIGH);'),
      uses: ['loop digitalRead 2', 'loop digitalWrite 3,4 = 1 perhaps'],
    },
    {
      about: 'what follows an early return is perhaps',
      text: inLoop('', 'if (digitalRead(2)) return; digitalWrite(3, HIGH);'),
      uses: ['loop digitalRead 2', 'loop digitalWrite 3 = 1 perhaps'],
    },
    {
      about: 'but not what follows the call',
      text: inLoop(
        'void f() { if (digitalRead(2)) return; digitalWrite(3, HIGH); }',
        'f(); digitalWrite(4, HIGH);',
      ),
      uses: ['loop f digitalRead 2', 'loop f digitalWrite 3 = 1 perhaps', 'loop digitalWrite 4 = 1'],
    },
    {
      about: 'a value returned early',
      text: inLoop('int pick() { if (digitalRead(2)) return 5; return 6; }', 'digitalWrite(pick(), HIGH);'),
      uses: ['loop pick digitalRead 2', 'loop digitalWrite 5,6 = 1 perhaps'],
    },
    {
      about: 'a level that may be either',
      text: inLoop('', 'digitalWrite(4, !digitalRead(2));'),
      uses: ['loop digitalRead 2', 'loop digitalWrite 4 = 0,1'],
    },
    {
      about: 'a switch that is known, with a case that falls through',
      text: inLoop(
        'int mode = 1;',
        'switch (mode) { case 0: digitalWrite(3, 1); break; case 1: digitalWrite(4, 1); case 2: digitalWrite(5, 1); break; default: digitalWrite(6, 1); }',
      ),
      uses: ['loop digitalWrite 4 = 1', 'loop digitalWrite 5 = 1'],
    },
    {
      about: 'a switch that is not',
      text: inLoop(
        '',
        'int p = 0; switch (analogRead(A0)) { case 0: p = 3; break; case 1: p = 4; break; default: return; } digitalWrite(p, 1);',
      ),
      uses: ['loop analogRead 14', 'loop digitalWrite 3,4 = 1 perhaps'],
    },
    {
      about: 'a condition that is never met',
      text: inLoop(
        '',
        'if (0) digitalWrite(3, 1); while (false) digitalWrite(4, 1); for (;;) { digitalWrite(5, 1); if (digitalRead(2)) break; } digitalWrite(6, 1);',
      ),
      uses: ['loop digitalWrite 5 = 1', 'loop digitalRead 2', 'loop digitalWrite 6 = 1'],
    },
    {
      about: 'an endless loop in setup: loop() is never reached',
      text: 'void setup() { while (true) { digitalWrite(5, HIGH); } digitalWrite(6, HIGH); }\nvoid loop() { digitalWrite(7, HIGH); }',
      uses: ['setup digitalWrite 5 = 1'],
    },
    {
      about: 'the right side of && is perhaps',
      text: inLoop('', 'if (digitalRead(2) && digitalRead(3)) {}'),
      uses: ['loop digitalRead 2', 'loop digitalRead 3 perhaps'],
    },
    {
      about: 'conditional compilation',
      text: inLoop(
        '#define FITTED 1\n#if FITTED && defined(__AVR__)\n#define P 3\n#else\n#define P 4\n#endif',
        '#ifdef MISSING\ndigitalWrite(9, 1);\n#elif FITTED == 1\ndigitalWrite(P, 1);\n#else\ndigitalWrite(8, 1);\n#endif',
      ),
      uses: ['loop digitalWrite 3 = 1'],
    },
    {
      about: 'conditional compilation that cannot be decided: both',
      text: inLoop('#if VERSION(3, 2)\n#define P 3\n#else\n#define P 4\n#endif', 'digitalWrite(P, 1);'),
      uses: ['loop digitalWrite 3,4 = 1 perhaps'],
    },
  ]);
});

describe('from round to round of loop()', () => {
  check([
    {
      about: 'a counter without end is unknown',
      text: inLoop('int i = 2;', 'digitalWrite(i, HIGH); i = i + 1;'),
      uses: ['loop digitalWrite ? `i` changes from round to round of loop() = 1'],
    },
    {
      about: 'a counter that comes round is not',
      text: inLoop('int pins[] = {3, 5, 6}; int at = 0;', 'digitalWrite(pins[at], HIGH); at = (at + 1) % 3;'),
      uses: ['loop digitalWrite 3,5,6 = 1 perhaps'],
    },
    {
      about: 'a state that toggles',
      text: inLoop('bool on = false;', 'on = !on; digitalWrite(3, on);'),
      uses: ['loop digitalWrite 3 = 0,1'],
    },
    {
      about: 'a branch that opens in a later round',
      text: inLoop('int step = 0;', 'if (step == 1) digitalWrite(4, HIGH); step = 1;'),
      uses: ['loop digitalWrite 4 = 1 perhaps'],
    },
    {
      about: 'a static local',
      text: inLoop('', 'static byte p = 4; digitalWrite(p, HIGH); p = 5;'),
      uses: ['loop digitalWrite 4,5 = 1 perhaps'],
    },
  ]);
});

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
      uses: ['setup beep tone 4 = 440', 'setup pinMode 4 = 1 output'],
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

describe('analogue inputs', () => {
  check([
    {
      about: 'are counted from 0 or named, for reading only',
      text: inSetup(
        'const int dial = 2;',
        'analogRead(0); analogRead(A1); analogRead(dial); digitalRead(dial);',
      ),
      uses: ['setup analogRead 14', 'setup analogRead 15', 'setup analogRead 16', 'setup digitalRead 2'],
    },
  ]);
});

describe('interrupts', () => {
  check([
    {
      about: 'a handler runs in its own phase, and what it sets is open to loop()',
      text: 'volatile bool pressed = false;\nvoid onPress() { pressed = true; digitalWrite(5, HIGH); }\nvoid setup() { attachInterrupt(digitalPinToInterrupt(2), onPress, FALLING); }\nvoid loop() { if (pressed) { digitalWrite(4, HIGH); pressed = false; } }',
      uses: [
        'setup attachInterrupt 2 = 2',
        'loop digitalWrite 4 = 1 perhaps',
        'interrupt digitalWrite 5 = 1 perhaps',
      ],
    },
    {
      about: 'a raw line number',
      text: inSetup('void f() {}', 'attachInterrupt(1, f, CHANGE);'),
      uses: ['setup attachInterrupt 3 = 1'],
    },
    {
      about: 'a pin without a line is still the pin that was meant',
      text: inSetup('void f() {}', 'attachInterrupt(digitalPinToInterrupt(7), f, CHANGE);'),
      uses: ['setup attachInterrupt 7 = 1'],
    },
    {
      about: 'a line that the board has not',
      text: inSetup('void f() {}', 'attachInterrupt(5, f, CHANGE);'),
      uses: ['setup attachInterrupt ? the board has no interrupt line 5 = 1'],
    },
    {
      about: 'a handler of the chip',
      text: 'ISR(TIMER1_COMPA_vect) { digitalWrite(9, HIGH); }\nvoid setup() {}\nvoid loop() {}',
      uses: ['interrupt digitalWrite 9 = 1 perhaps'],
    },
    {
      about: 'a function handed to a library',
      text: inSetup('void onData(int n) { digitalWrite(9, HIGH); }', 'Wire.onReceive(onData);'),
      uses: ['interrupt digitalWrite 9 = 1 perhaps'],
    },
  ]);
});

describe('objects', () => {
  const probe =
    'class Probe {\n public:\n  Probe(byte pin, bool pull = true) : pin_(pin) { pull_ = pull; }\n  void begin();\n  bool on() const { return digitalRead(pin_) == LOW; }\n private:\n  const byte pin_;\n  bool pull_;\n};\nvoid Probe::begin() { pinMode(pin_, pull_ ? INPUT_PULLUP : INPUT); }\n';
  check([
    { about: 'a servo', text: inSetup('Servo gate;', 'gate.attach(9);'), uses: ['setup Servo.attach 9'] },
    {
      about: 'an array of servos',
      text: inSetup(
        'Servo gates[2];\nconst int pins[] = {9, 10};',
        'for (int i = 0; i < 2; i++) gates[i].attach(pins[i]);',
      ),
      uses: ['setup Servo.attach 9,10'],
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

describe('broken text', () => {
  check([
    {
      about: 'a call without its end',
      text: 'void setup() {\n  pinMode(3, OUTPUT);\n  digitalWrite(4, \n}\nvoid loop() { digitalWrite(5, HIGH); }\n',
      uses: ['setup pinMode 3 = 1 output', 'setup digitalWrite 4', 'loop digitalWrite 5 = 1'],
    },
    {
      about: 'a body without its end',
      text: 'void setup() {\n  pinMode(3, OUTPUT);\n  if (true) {\n}\n\nvoid loop() {\n  digitalWrite(5, HIGH);\n}\n',
      uses: ['setup pinMode 3 = 1 output', 'loop digitalWrite 5 = 1'],
    },
    {
      about: 'a stray bracket',
      text: 'void setup() {\n  pinMode(3, OUTPUT));\n  pinMode(4, OUTPUT);\n}\n',
      uses: ['setup pinMode 3 = 1 output', 'setup pinMode 4 = 1 output'],
    },
    {
      about: 'a missing semicolon',
      text: 'const int led = 3\nvoid setup() {\n  pinMode(4, OUTPUT)\n  pinMode(5, OUTPUT);\n}\n',
      uses: ['setup pinMode 4 = 1 output', 'setup pinMode 5 = 1 output'],
    },
  ]);
});

describe('several files', () => {
  it('share one scope, and headers are read where they are included', async () => {
    const files = {
      'main.ino': '#include "pins.h"\nvoid setup() { pinMode(LAMP, OUTPUT); other(); }\nvoid loop() {}\n',
      'other.ino': 'void other() { pinMode(horn, OUTPUT); }\n',
      'pins.h': '#pragma once\n#define LAMP 4\nconst int horn = LAMP + 1;\n',
    };
    expect(await table(files)).toEqual(['setup pinMode 4 = 1 output', 'setup other pinMode 5 = 1 output']);
  });
});
