/** What is known of a pin where the sketch loops, branches and comes round. */
import { describe } from 'vitest';
import { check, inLoop, inSetup } from './rows';

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
      uses: [
        'loop digitalWrite 2,3,4,5,6,7,8,9,10,11,12 = 1 perhaps',
        'loop digitalWrite ? `i` changes from round to round of loop() = 1',
      ],
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
