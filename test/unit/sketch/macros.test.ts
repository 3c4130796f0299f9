/** Macros that are more than a name for a value. */
import { describe } from 'vitest';
import { check, inSetup } from './rows';

describe('macros', () => {
  check([
    {
      about: 'each place is a use of its own',
      text: inSetup(
        '#define MAKE(n) do { pinMode(4 + (n), OUTPUT); digitalWrite(4 + (n), LOW); } while (0)',
        'MAKE(0); MAKE(1);',
      ),
      uses: [
        'setup pinMode 4 = 1 output',
        'setup digitalWrite 4 = 0',
        'setup pinMode 5 = 1 output',
        'setup digitalWrite 5 = 0',
      ],
    },
    {
      about: 'a list that is handed macros',
      text: inSetup(
        '#define LAMPS(X) X(4) X(7)\n#define OUT(p) pinMode(p, OUTPUT);\n#define LOWER(p) digitalWrite(p, LOW);',
        'LAMPS(OUT)\nLAMPS(LOWER)',
      ),
      uses: [
        'setup pinMode 4 = 1 output',
        'setup pinMode 7 = 1 output',
        'setup digitalWrite 4 = 0',
        'setup digitalWrite 7 = 0',
      ],
    },
    {
      about: 'a list that becomes a table',
      text: inSetup(
        '#define LAMPS(X) X(4) X(7)\n#define ENTRY(p) p,\nint pins[] = { LAMPS(ENTRY) 10 };',
        'for (int p : pins) pinMode(p, OUTPUT);',
      ),
      uses: ['setup pinMode 4,7,10 = 1 output'],
    },
    {
      about: 'names that are pasted',
      text: inSetup(
        '#define LAMP_red 9\n#define LAMP_2 10\n#define PIN_OF(n) LAMP_##n\n#define JOIN(a, b) a##b\n#define PAIR(a, b) JOIN(a, b)\n#define TWO 2',
        'pinMode(PIN_OF(red), OUTPUT); pinMode(PAIR(LAMP_, TWO), OUTPUT);',
      ),
      uses: ['setup pinMode 9 = 1 output', 'setup pinMode 10 = 1 output'],
    },
    {
      about: 'macros that declare, outside and inside of functions',
      text: inSetup(
        '#define LAMP(name, pin) const int name = pin;\nLAMP(beacon, 12)\nLAMP(horn, 11);',
        'LAMP(inner, 10) pinMode(beacon, OUTPUT); pinMode(horn, OUTPUT); pinMode(inner, OUTPUT);',
      ),
      uses: ['setup pinMode 12 = 1 output', 'setup pinMode 11 = 1 output', 'setup pinMode 10 = 1 output'],
    },
    {
      about: 'macros that define functions',
      text: inSetup(
        '#define PRESS(n) void press##n() { digitalWrite(n, HIGH); }\nPRESS(3)\nPRESS(4)',
        'press4(); press3();',
      ),
      uses: ['setup press4 digitalWrite 4 = 1', 'setup press3 digitalWrite 3 = 1'],
    },
    {
      about: 'loops and locals in a macro',
      text: inSetup(
        '#define ALL(from, to) for (int at = from; at <= to; at++) pinMode(at, OUTPUT)',
        'ALL(5, 7);',
      ),
      uses: ['setup pinMode 5,6,7 = 1 output'],
    },
    {
      about: 'any number of arguments, and a text of one',
      text: inSetup(
        '#define TABLE(name, ...) const int name[] = { __VA_ARGS__ }\n#define LOG(x) Serial.println(#x)\nTABLE(pins, 2, 3);',
        'LOG(a b); for (int p : pins) pinMode(p, OUTPUT);',
      ),
      uses: ['setup pinMode 2,3 = 1 output'],
    },
    {
      about: 'defined anew in between',
      text: inSetup(
        '#define LAMP(x) digitalWrite(3, x)\nvoid first() { LAMP(HIGH); }\n#undef LAMP\n#define LAMP(x) digitalWrite(4, x)',
        'first(); LAMP(LOW);',
      ),
      uses: ['setup first digitalWrite 3 = 1', 'setup digitalWrite 4 = 0'],
    },
    {
      about: 'a macro that calls itself ends',
      text: inSetup('#define TURN(x) TURN(x##1) x\n', 'TURN(3); pinMode(6, OUTPUT);'),
      uses: ['setup pinMode 6 = 1 output'],
    },
  ]);
});
