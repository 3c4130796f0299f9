/** In which states pins can be at the same time. */
import { describe, expect, it } from 'vitest';
import { read } from './reading';
import { inLoop, inSetup } from './rows';

/** `3 low, 4 high|low` for each moment, pins in order. */
async function moments(text: string): Promise<string[] | undefined> {
  const { moments: found } = await read(text);
  return found?.map(({ pins }) =>
    Object.entries(pins)
      .map(([pin, states]) => `${pin} ${states.join('|')}`)
      .join(', '),
  );
}

interface Row {
  readonly about: string;
  readonly text: string;
  readonly moments: readonly string[] | undefined;
}

function check(rows: readonly Row[]): void {
  for (const { about, text, moments: expected } of rows) {
    it(about, async () => {
      expect(await moments(text)).toEqual(expected);
    });
  }
}

describe('straight code', () => {
  check([
    { about: 'a sketch without outputs', text: inSetup('', 'digitalRead(3);'), moments: [''] },
    {
      about: 'an input until it is more, and every step between',
      text: inSetup('', 'pinMode(3, OUTPUT); digitalWrite(3, HIGH); pinMode(4, INPUT_PULLUP);'),
      moments: ['3 input, 4 input', '3 low, 4 input', '3 high, 4 input', '3 high, 4 pull-up'],
    },
    {
      about: 'a level in front of the mode',
      text: inSetup('', 'digitalWrite(3, HIGH); pinMode(3, OUTPUT);'),
      moments: ['3 input', '3 pull-up', '3 high'],
    },
    {
      about: 'two lamps by turns are never lit together',
      text: `void setup() { pinMode(3, OUTPUT); pinMode(4, OUTPUT); }
void loop() { digitalWrite(3, HIGH); delay(5); digitalWrite(3, LOW); digitalWrite(4, HIGH); delay(5); digitalWrite(4, LOW); }`,
      moments: ['3 input, 4 input', '3 low, 4 input', '3 low, 4 low', '3 high, 4 low', '3 low, 4 high'],
    },
    {
      about: 'one of several lamps by a function with known arguments',
      text: `const int pins[] = {5, 6, 7};
void light(int a, int b) {
  for (int i = 0; i < 3; i++) pinMode(pins[i], INPUT);
  pinMode(a, OUTPUT); pinMode(b, OUTPUT); digitalWrite(a, HIGH);
}
void setup() {}
void loop() { light(5, 6); light(6, 7); }`,
      moments: [
        '5 input, 6 input, 7 input',
        '5 low, 6 input, 7 input',
        '5 low, 6 low, 7 input',
        '5 high, 6 low, 7 input',
        '5 input, 6 low, 7 input',
        '5 input, 6 low, 7 low',
        '5 input, 6 high, 7 low',
        '5 input, 6 input, 7 low',
      ],
    },
    {
      about: 'a register changes its pins at once',
      text: inSetup('', 'DDRB = 3; PORTB = 1; PORTB ^= 3;'),
      moments: [
        '8 input, 9 input, 10 input, 11 input, 12 input, 13 input',
        '8 low, 9 low, 10 input, 11 input, 12 input, 13 input',
        '8 high, 9 low, 10 input, 11 input, 12 input, 13 input',
        '8 low, 9 high, 10 input, 11 input, 12 input, 13 input',
      ],
    },
    {
      about: 'pulses are both levels',
      text: inSetup('', 'analogWrite(3, 90); tone(4, 440); noTone(4);'),
      moments: ['3 input, 4 input', '3 high|low, 4 input', '3 high|low, 4 high|low', '3 high|low, 4 low'],
    },
  ]);
});

describe('what is not decided', () => {
  check([
    {
      about: 'sides of a branch are not mixed',
      text: inLoop(
        '',
        'if (digitalRead(9)) { digitalWrite(3, LOW); pinMode(3, OUTPUT); } else { pinMode(3, INPUT); pinMode(4, INPUT_PULLUP); }',
      ),
      moments: ['3 input, 4 input', '3 low, 4 input', '3 input, 4 pull-up', '3 low, 4 pull-up'],
    },
    {
      about: 'one of two pins is one of them',
      text: inSetup('', 'int pin = digitalRead(9) ? 3 : 4; pinMode(pin, INPUT_PULLUP);'),
      moments: ['3 input, 4 input', '3 pull-up, 4 input', '3 input, 4 pull-up'],
    },
    {
      about: 'a handler may come at any moment',
      text: `void go() { digitalWrite(4, HIGH); }
void setup() { pinMode(3, OUTPUT); attachInterrupt(0, go, RISING); }
void loop() {}`,
      moments: ['3 input, 4 input|pull-up', '3 low, 4 input|pull-up'],
    },
    {
      about: 'a loop without known rounds',
      text: inLoop('', 'while (digitalRead(9)) { pinMode(3, INPUT_PULLUP); pinMode(3, INPUT); }'),
      moments: ['3 input', '3 pull-up'],
    },
    {
      about: 'an unknown pin may be any',
      text: inSetup('', 'pinMode(analogRead(0), OUTPUT);'),
      moments: undefined,
    },
    {
      about: 'so may a device that is not known',
      text: inSetup('Gadget gadget(3);', 'pinMode(4, OUTPUT);'),
      moments: undefined,
    },
    {
      about: 'a function that calls itself without end',
      text: inLoop('void again(int n) { pinMode(3, OUTPUT); again(n + 1); }', 'again(0);'),
      moments: undefined,
    },
  ]);
});

describe('too many combinations', () => {
  const byTurns =
    'if (digitalRead(17)) { digitalWrite(14, LOW); digitalWrite(15, HIGH); } else { digitalWrite(15, LOW); digitalWrite(14, HIGH); }';
  const free = [...Array(11).keys()].map((pin) => `digitalWrite(${pin + 2}, random(2) ? HIGH : LOW);`);
  const toggled = [...Array(11).keys()].map(
    (pin) => `if (digitalRead(18)) digitalWrite(${pin + 2}, HIGH); else digitalWrite(${pin + 2}, LOW);`,
  );

  it('loosen the pins that change by themselves, and keep what never goes together', async () => {
    const { moments: found = [], loosePins = [] } = await read(inLoop('', [...toggled, byTurns].join('\n')));
    expect(found.length).toBeGreaterThan(1);
    expect(found.length).toBeLessThanOrEqual(256);
    expect(loosePins.length).toBeGreaterThan(0);
    expect(loosePins.every((pin) => pin >= 2 && pin <= 12)).toBe(true);
    for (const { pins } of found) {
      expect(loosePins.every((pin) => pins[pin] !== undefined)).toBe(true);
    }
    // Levels of what is no output are pull-ups.
    const both = found.filter(({ pins }) => pins[14]?.includes('pull-up') && pins[15]?.includes('pull-up'));
    expect(both).toEqual([]);
  });

  it('are not made by levels that are not known', async () => {
    const { moments: found, loosePins } = await read(inLoop('', free.join('\n')));
    expect(found).toBeDefined();
    expect(loosePins).toBeUndefined();
  });
});
