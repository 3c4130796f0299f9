/** Clean builds in several hands, for what must stay silent while a line is typed into them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../fixture/bench';

export interface TypingBuild {
  readonly sketch: string;
  readonly manifest: string;
  /** Files beside the manifest. */
  readonly beside?: Readonly<Record<string, string>>;
  /** Ends of lines behind which something is typed inside a function. */
  readonly inside: readonly string[];
  /** The same outside of functions; an empty text is the very beginning. */
  readonly outside: readonly string[];
  /** Whole lines that can go without leaving anything to tell. */
  readonly lines: readonly string[];
}

const example = (name: string, file: string) =>
  readFileSync(join(root, 'hardware-schemas/examples', name, file), 'utf8');

const harbour: TypingBuild = {
  sketch: example('harbour-model', 'harbour-model.ino'),
  manifest: example('harbour-model', 'hardware.jsonc'),
  inside: [
    'void setup() {',
    'void loop() {',
    'void setLamp(byte pin, bool on) {',
    'void moveGate(bool shut) {',
    'pinMode(horn, OUTPUT);',
    'setLamp(restartLamp, true);',
    'moveGate(isHigh);',
    'delay(50);',
  ],
  outside: ['', 'bool wasHigh = false;', '#define GATE_PIN 9', 'delay(50);\n}'],
  lines: ['  gate.write(gateOpen);', '    wasHigh = isHigh;', '  delay(350);', 'bool wasHigh = false;'],
};

const quay: TypingBuild = {
  sketch: example('quay-lamp', 'quay-lamp.ino'),
  manifest: example('quay-lamp', 'hardware.jsonc'),
  beside: { 'quay-board.json': example('quay-lamp', 'quay-board.json') },
  inside: ['void setup() {', 'delay(800);', 'pinMode(LAMP_PIN, OUTPUT);'],
  outside: ['', '#define LAMP_PIN 10', 'delay(200);\n}'],
  lines: ['  delay(800);', '  digitalWrite(LAMP_PIN, LOW);'],
};

const lightHouse: TypingBuild = {
  sketch: `/* Light house: three lamps in a row, a bell,
   and a button that stops the round. */
const byte lamps[] = {9, 5, 6};
const byte bell = 8;
const byte stopButton = 2;

volatile bool stopped = false;

void onStop()
{
\tstopped = !stopped;
}

void showLamp(byte index, int level)
{
\t/* only one is lit */
\tfor (byte i = 0; i < 3; i++)
\t{
\t\tanalogWrite(lamps[i], i == index ? level : 0);
\t}
}

void setup()
{
\tfor (byte i = 0; i < 3; i++)
\t{
\t\tpinMode(lamps[i], OUTPUT);
\t}
\tpinMode(bell, OUTPUT);
\tpinMode(stopButton, INPUT_PULLUP);
\tattachInterrupt(digitalPinToInterrupt(stopButton), onStop, FALLING);
\tSerial.begin(9600);
}

void loop()
{
\tfor (byte index = 0; index < 3; index++)
\t{
\t\tif (stopped)
\t\t\tbreak;
\t\tshowLamp(index, 200);
\t\tdelay(400);
\t}
\tif (digitalRead(stopButton) == LOW)
\t{
\t\ttone(bell, 880, 100);
\t}
\telse
\t{
\t\tnoTone(bell);
\t}
}
`,
  manifest: `{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "low": { "kind": "led", "colour": "red" },
    "middle": { "kind": "led", "colour": "red" },
    "high": { "kind": "led", "colour": "red" },
    "R1": { "kind": "resistor", "value": "470" },
    "R2": { "kind": "resistor", "value": "470" },
    "R3": { "kind": "resistor", "value": "470" },
    "bell": { "kind": "buzzer", "drive": "passive", "type": "piezo" },
    "stop": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["D9", "R1", "low", "GND"] },
    { "path": ["D5", "R2", "middle", "low.cathode"] },
    { "path": ["D6", "R3", "high", "middle.cathode"] },
    { "from": "D8", "to": "bell.+" },
    { "from": "bell.-", "to": "high.cathode" },
    { "path": ["D2", "stop", "bell.-"] }
  ]
}`,
  inside: [
    'void setup()\n{',
    'void loop()\n{',
    '/* only one is lit */',
    'pinMode(bell, OUTPUT);',
    'delay(400);',
  ],
  outside: ['volatile bool stopped = false;', '\tstopped = !stopped;\n}'],
  lines: ['\tSerial.begin(9600);', '\t\tdelay(400);', '\tstopped = !stopped;'],
};

const buoy: TypingBuild = {
  sketch: `#ifndef LAMP
#define LAMP 7
#endif

enum State { dark, lit, waiting };

class Buoy {
 public:
  Buoy(byte pin, int key) : pin_(pin), key_(key) {}

  void begin() {
    pinMode(pin_, OUTPUT);
    pinMode(key_, INPUT_PULLUP);
  }

  void light(bool on) { digitalWrite(pin_, on); }

  bool asked() const {
    return digitalRead(key_) == LOW;
  }

 private:
  const byte pin_;
  const int key_;
};

Buoy buoy(LAMP, 4);
State state = dark;

void setup() {
  buoy.begin();
#ifdef DEBUG
  Serial.begin(9600);
#endif
}

void loop() {
  switch (state) {
    case dark:
      if (buoy.asked()) state = lit;
      break;
    case lit:
      buoy.light(true);
      state = waiting;
      break;
    default:
      buoy.light(false);
      state = dark;
  }
}
`,
  manifest: `{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "lamp": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" },
    "key": { "kind": "push-button" }
  },
  "wires": [
    { "path": ["D7", "R1", "lamp", "GND"] },
    { "path": ["D4", "key", "lamp.cathode"] }
  ]
}`,
  inside: ['void setup() {', 'void loop() {', 'void begin() {', 'bool asked() const {', 'buoy.light(true);'],
  outside: ['enum State { dark, lit, waiting };', 'State state = dark;', '#endif'],
  lines: ['  Serial.begin(9600);', '      state = waiting;'],
};

export const typingBuilds: Readonly<Record<string, TypingBuild>> = {
  'harbour model': harbour,
  'quay lamp': quay,
  'light house': lightHouse,
  buoy,
};

/** Lines for a function's body; names in them are nobody's unless a build has them. */
export const bodyLines: readonly string[] = [
  'if (isHigh) { delay(3); }',
  'if (wasHigh) return;',
  'for (int i = 0; i < 3; i++) {\n  delay(40 + 10 * i);\n}',
  'while (millis() < 50) { if (stopped) break; }',
  'do { delay(1); } while (millis() < 9);',
  'switch (level) { case 1: delay(4); break; default: break; }',
  'Serial.println("tide (" + String(level) + ")");',
  'int levels[3] = {1, 2, random(9)};',
  "char mark = 'x';",
  '/* a word on the tide */',
  '// it is (not [over',
  '#if DEBUG\n  delay(5);\n#endif',
  'auto ring = [](int times) { delay(times); };',
  'level = ready ? 3 : millis() > 8 && !done;',
  '}',
  '{',
  'gate.x->y(map(level, 0, 1023, 10, 95), foo[2]);',
  'static const unsigned long spell = 3000UL;',
];

/** The same for the top of a file. */
export const topLines: readonly string[] = [
  'const byte mastPins[] = {1, 2, 3};',
  'struct Mast { byte pin; int level; };',
  'enum Weather { calm, rough = 4 };',
  'template <typename T> T twice(T value) { return value + value; }',
  'class Flag { public: void hoist() { up = true; } bool up; };',
  'void signalAll(int times) {\n  for (int i = 0; i < times; i++) {\n    delay(20);\n  }\n}',
  '#define SPELL (3 * 20)',
  '#include <EEPROM.h>',
  '#if defined(DEBUG)\nint spells = 3;\n#endif',
  'namespace mast { int height = 4; }',
  'static unsigned long lastTurn = 0;',
  '/* what follows was tried */',
  '}',
];
