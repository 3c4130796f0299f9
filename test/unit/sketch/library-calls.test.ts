/** What the calls, constructors and objects of libraries do to pins, as the data describes them. */
import { describe, expect, it } from 'vitest';
import { read } from './reading';
import { check, inSetup } from './rows';
import { inventedLibraries } from './test-libraries';

describe('constructors', () => {
  check(
    [
      {
        about: 'a global, a local, one behind `new`, one in an expression',
        text: inSetup(
          '#define AIR 3\nProbe global(AIR, 22);\nProbe *later;',
          'Probe local(4); later = new Probe(5); later->measure(); Probe copy = Probe(6); copy.measure();',
        ),
        uses: [
          'setup Probe 3 input',
          'setup Probe 4 input',
          'setup Probe 5 input',
          'setup Probe.measure 5',
          'setup Probe 6 input',
          'setup Probe.measure 6',
        ],
      },
      {
        about: 'one that reads as a prototype',
        text: inSetup('#define KIND 1\nconst int air = 3;\nProbe probe(air, KIND);', 'probe.begin();'),
        uses: ['setup Probe 3 input', 'setup Probe.begin 3 input-pullup'],
      },
      {
        about: 'a prototype stays one',
        text: inSetup('void report(Measurement);\nProbe make(int pin);', 'report(4);').concat(
          'void report(int pin) { pinMode(pin, OUTPUT); }',
        ),
        uses: ['setup report pinMode 4 = 1 output'],
      },
      {
        about: 'members, by a member initialiser and by a start of their own',
        text: inSetup(
          'class Buoy { Probe air; Probe sea = Probe(9); public: Buoy(int pin) : air(pin) {} void go() { air.measure(); sea.measure(); } };\nBuoy buoy(8);',
          'buoy.go();',
        ),
        uses: [
          'setup Buoy::Buoy Probe 9 input',
          'setup Buoy::Buoy Probe 8 input',
          'setup Buoy::go Probe.measure 8',
          'setup Buoy::go Probe.measure 9',
        ],
      },
      {
        about: 'arrays of objects, in each way of writing them',
        text: inSetup(
          'Probe three[] = {Probe(2), {3}, 4};',
          'for (int i = 0; i < 3; i++) three[i].measure();',
        ),
        uses: [
          'setup Probe 2 input',
          'setup Probe 3 input',
          'setup Probe 4 input',
          'setup Probe.measure 2,3,4',
        ],
      },
      {
        about: 'the number of arguments chooses, and a number stands for no pin',
        text: inSetup('Panel two(7, 8); Panel one(9, 255); Panel bare(10); Panel many(2, -1, 4, 5);', ''),
        uses: [
          'setup Panel 7 output',
          'setup Panel 8 output',
          'setup Panel 9 output',
          'setup Panel 10 output',
          'setup Panel 2 output',
          'setup Panel 4 output',
          'setup Panel 5 output',
        ],
      },
      {
        about: 'arrays of pins: every one is taken',
        text: inSetup('byte rows[] = {2, 3}; byte columns[2] = {A0, A1};\nMatrix keys(rows, columns);', ''),
        uses: ['setup Matrix 2,3 input-pullup', 'setup Matrix 14,15 output'],
      },
      {
        about: 'a class by the end of its name',
        text: inSetup('Maker_Strip strip(30, 6);', 'strip.begin();'),
        uses: ['setup Maker_Strip 6', 'setup Maker_Strip.begin 6 output'],
      },
      {
        about: 'bases in the data: their methods, with the pins of the derived constructor',
        text: inSetup('FineProbe fine(1, 12);', 'fine.measure();'),
        uses: ['setup FineProbe 12', 'setup FineProbe.measure 12'],
      },
      {
        about: 'a class of the sketch that comes from one of a library',
        text: inSetup(
          'class Sea : public Probe { public: Sea(int pin) : Probe(pin) {} void go() { measure(); } };\nSea sea(11);',
          'sea.go(); sea.begin();',
        ),
        uses: [
          'setup Sea::Sea Probe 11 input',
          'setup Sea::go Probe.measure 11',
          'setup Probe.begin 11 input-pullup',
        ],
      },
    ],
    inventedLibraries,
  );
});

describe('calls', () => {
  check(
    [
      {
        about: 'a pin in angle brackets, as a name and as a number',
        text: inSetup('const int data = 6;', 'Chains.add<CHIP, data>(x, 3); Chains.add<CHIP, 7>(x, 3);'),
        uses: ['setup Chains.add 6 output', 'setup Chains.add 7 output'],
      },
      {
        about: 'pins by the roles of the board, and none where it has none',
        text: inSetup('', 'TheLine.begin(); TheVoid.begin();'),
        uses: ['setup TheLine.begin 5,6', 'setup TheVoid.begin '],
      },
      {
        about: 'functions that speak of an earlier call',
        text: inSetup('', 'openGate(4); closeGate();'),
        uses: ['setup openGate 4 output', 'setup closeGate 4'],
      },
      {
        about: 'a library of another chip is not there',
        text: inSetup('', 'Other.reset(4);'),
        uses: [],
      },
      {
        about: 'a handler given to a library is run',
        text: 'byte a[] = {2}; byte b[] = {3};\nMatrix keys(a, b);\nvoid pressed() { digitalWrite(9, HIGH); }\nvoid setup() { keys.onKey(pressed); }\nvoid loop() {}',
        uses: [
          'setup Matrix 2 input-pullup',
          'setup Matrix 3 output',
          'setup Matrix.onKey ',
          'interrupt digitalWrite 9 = 1 perhaps',
        ],
      },
      {
        about: 'a function of the core in a variable',
        text: inSetup('', 'void (*put)(uint8_t, uint8_t) = digitalWrite; put(6, HIGH);'),
        uses: ['setup digitalWrite 6 = 1'],
      },
    ],
    inventedLibraries,
  );

  it('points at the name of the call where no argument is a pin', async () => {
    const text = inSetup('', 'TheLine.begin();');
    const [use] = (await read(text, inventedLibraries)).uses;
    expect(text.slice(use?.span.start, use?.span.end)).toBe('begin');
    expect(text.slice(use?.callSpan.start, use?.callSpan.end)).toBe('TheLine.begin()');
  });
});

describe('what nobody describes', () => {
  const one = (about: string, globals: string, body: string, uses: readonly string[]) => ({
    about,
    text: inSetup(globals, body),
    uses,
  });
  check([
    one('an object of an unknown class may take a pin', 'Gadget gadget(7);', '', [
      'setup Gadget ? `Gadget` is a class that is not known here',
    ]),
    one('so may one that is begun', 'Gadget gadget;', 'gadget.begin(7);', [
      'setup Gadget.begin ? `Gadget.begin` is not known here',
    ]),
    one('and an unknown macro', '', 'MAKE_OUTPUT(7);', [
      'setup MAKE_OUTPUT ? `MAKE_OUTPUT` is not known here',
    ]),
    one('and an unknown register', '', 'PORTK = 3; GPIOA->ODR = 4;', [
      'setup PORTK ? `PORTK` is a register that is not known here',
      'setup GPIOA ? `GPIOA` is a register that is not known here',
    ]),
    one('numbers that are no pins take none', 'Gadget gadget(9600);', 'gadget.begin(115200);', []),
    one(
      'texts, lists and sums take none',
      'String text(5); std::vector<int> list(5);',
      'memset(buffer, 0, 5); abs(4); sin(3); printf("%d", 5); Serial.print(4);',
      [],
    ),
    one(
      'the sketch’s own classes take none',
      'struct Dot { int x; Dot(int a) : x(a) {} };\nDot dot(5);',
      '',
      [],
    ),
  ]);
});
