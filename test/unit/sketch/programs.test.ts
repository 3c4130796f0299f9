/** Analogue numbers, handlers, broken text, and sketches of several files. */
import { describe, expect, it } from 'vitest';
import { table } from './reading';
import { check, inSetup } from './rows';

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
