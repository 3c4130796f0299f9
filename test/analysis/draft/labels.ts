/**
 * Sketches with the kind of part that hangs on each pin, set by hand from the sketch alone: its names, its remarks and
 * what it does with the pin, as somebody would who has to buy the parts. Where two kinds would do they stand with a `|`.
 * A load behind a transistor counts as the load. The word table was filled from the names that people give, and some
 * of these sketches were seen while it was: the share measured here is that of known material.
 */
export interface Labelled {
  /** Path below test/oracle/sketches, or a name with `text`. */
  readonly sketch: string;
  readonly text?: string;
  readonly board: string;
  /** `kind: pins; kind: pins`. */
  readonly right: string;
}

const row = (sketch: string, right: string): Labelled => ({
  sketch,
  board: sketch.includes('.mega') ? 'mega-2560' : sketch.includes('.leonardo') ? 'leonardo' : 'uno-r3',
  right,
});

const own = (sketch: string, board: string, right: string, text: string): Labelled => ({
  sketch,
  board,
  right,
  text,
});

export const labelled: readonly Labelled[] = [
  row(
    'exhibits/volcano.ino',
    'push-button: D2; led: D3 D5 D6; relay-module|dc-motor: D7; buzzer|speaker: D8',
  ),
  row('exhibits/water-wheel.ino', 'relay-module: D4 D5 D6; digital-sensor: D10 D11; push-button: D12'),
  row('exhibits/quiz-table.ino', 'push-button: D2 D3 D4 D5 A0; led: D6 D7 D8 D9; buzzer: D11'),
  row('exhibits/skeleton-door.ino', 'servo: D9 D10; pir-sensor: D2; led: D6 A1'),
  row(
    'exhibits/tram-model.leonardo.ino',
    'reed-switch: D2 D3; h-bridge: D5 D6 D9; buzzer|speaker: D11; led: A0 A1 A2 A3 A4 A5',
  ),
  row('exhibits/fault-lamps.ino', 'led: D4 D5 D6 D7 D8'),
  row('fixtures/battery-cycler.ino', 'relay-module: D7 D8; dc-motor: D10; analog-sensor: A2 A3'),
  row(
    'fixtures/paint-shaker.ino',
    'push-button|toggle-switch|limit-switch: D2; dc-motor: D11; led: D6 D7 D8 D9',
  ),
  row(
    'fixtures/programmer-jig.ino',
    'relay-module|optocoupler: D2; optocoupler: D3 D4; led: D5 D6; reed-switch|limit-switch|push-button: D7',
  ),
  row('fixtures/pick-light.mega.ino', 'led: D22 D24 D26; push-button: D23 D25 D27'),
  row(
    'fixtures/mill.mega.ino',
    'stepper-driver: D22 D23 D24 D25 D26 D27 D28 D29 D30; limit-switch: D31 D32 D33; dc-motor: D9; relay-module|solenoid: D34',
  ),
  row(
    'fixtures/spot-welder.leonardo.ino',
    'push-button: D7; led: D8; n-mosfet|relay-module: D9; potentiometer: A0 A1',
  ),
  row('fixtures/valve-bench.leonardo.ino', 'solenoid: D2 D3 D4 D5 D6; dc-motor: D9; analog-sensor: A1'),
  row(
    'props/safe-dial.ino',
    'rotary-encoder: D2 D3; push-button|rotary-encoder: D4; led: D5 D6 D7; solenoid: D8',
  ),
  row(
    'props/ghost-phone.ino',
    'serial-device: D10 D11; push-button|toggle-switch: D2 D3; relay-module|h-bridge: D5 D6',
  ),
  row('props/magic-wand.ino', 'push-button: D2; led: D3; n-mosfet|relay-module: D4; dc-motor: D5'),
  row(
    'props/reactor-panel.leonardo.ino',
    'relay-module: D4 D5; rgb-led: D9 D10 D11; toggle-switch|push-button: D2 D3 D7 D8 D12',
  ),
  row('props/candle.ino', 'led: D9 D10 D11'),
  row('props/relays-and-arm.ino', 'serial-device: D2 D3; relay-module: D4 D5 D6; servo: D9'),
  row(
    'mixed/marble-run.ino',
    'servo: D9; digital-sensor|open-collector-sensor: D2; push-button: A0; led: D4 D5 D6 D7',
  ),
  row('mixed/memory-game.ino', 'push-button: D2 D3 D4 D7; led: D5 D6 D9 D10; buzzer|speaker: D11'),
  row('mixed/keypad-lock.ino', 'keypad-matrix: D2 D3 D4 D5 D6 D7 D8; solenoid: D10; buzzer: D11; led: D12'),
  row('mixed/seven-segments.ino', 'seven-segment-display: D2 D3 D4 D5 D6 D7 D8'),
  row('mixed/line-follower.ino', 'h-bridge: D5 D6 D7 D8 D9 D11; analog-sensor: A0 A1 A2'),
  row(
    'mixed/aquarium.ino',
    'led|led-strip: D9 D10; relay-module: D7 D8; digital-sensor|push-button: D4; analog-sensor|thermistor: A0',
  ),
  row('instruments/theremin.ino', 'ultrasonic-ranger: D7 D8 D12; speaker|buzzer: D9'),
  row(
    'instruments/logic-probe.ino',
    'push-button: D2; buzzer: D3; led: D4 D5 D6; connector|analog-sensor: A0',
  ),
  row(
    'instruments/laser-harp.mega.ino',
    'led: D30 D31 D32 D33 D34 D35; photoresistor|analog-sensor: A0 A1 A2 A3 A4 A5',
  ),
  row(
    'instruments/weather-mast.mega.ino',
    'open-collector-sensor|reed-switch: D18 D19; spi-device: D53; thermistor: A0 A1 A2; relay-module|n-mosfet: D5 D6 D7',
  ),
  row('servo/barrier.ino', 'servo: D9; photoresistor|analog-sensor: A0; led: D4'),
  row('servo/in-a-class.mega.ino', 'servo: D44 D45; solenoid: D46'),
  own(
    'ranger-and-text',
    'uno-r3',
    'ultrasonic-ranger: D11 D12; character-lcd: D2 D3 D4 D5 D6 D7; buzzer: D9',
    `
#include <NewPing.h>
#include <LiquidCrystal.h>
NewPing sonar(12, 11, 200);
LiquidCrystal lcd(7, 6, 5, 4, 3, 2);
const int hooter = 9;
void setup() { lcd.begin(16, 2); }
void loop() { if (sonar.ping_cm() < 20) tone(hooter, 880); else noTone(hooter); }
`,
  ),
  own(
    'clock-on-the-bus',
    'nano-v3',
    'i2c-device|i2c-display: A4 A5; push-button: D4; temperature-humidity-sensor: D7',
    `
#include <Wire.h>
#include <RTClib.h>
#include <LiquidCrystal_I2C.h>
#include <DHT.h>
RTC_DS3231 rtc;
LiquidCrystal_I2C screen(0x27, 16, 2);
DHT climate(7, DHT22);
#define SET_BUTTON 4
void setup() { Wire.begin(); rtc.begin(); screen.init(); climate.begin(); pinMode(SET_BUTTON, INPUT_PULLUP); }
void loop() { if (!digitalRead(SET_BUTTON)) screen.clear(); climate.readTemperature(); }
`,
  ),
  own(
    'stairs',
    'nano-v3',
    'addressable-strip: D6; pir-sensor: D2 D3; photoresistor: A0',
    `
#include <Quayside_NeoPixel.h>
Quayside_NeoPixel strip(60, 6, NEO_GRB);
const byte motionTop = 2, motionBottom = 3;
const byte daylight = A0;
void setup() { strip.begin(); pinMode(motionTop, INPUT); pinMode(motionBottom, INPUT); }
void loop() { if (analogRead(daylight) < 300 && (digitalRead(motionTop) || digitalRead(motionBottom))) strip.show(); }
`,
  ),
  own(
    'winch',
    'uno-r3',
    'dc-motor: D5; limit-switch: D7 D8; potentiometer: A1; push-button: D2',
    `
const int winchMotor = 5;
const int topLimit = 7;     // limit switch at the top
const int bottomLimit = 8;
const int speedKnob = A1;
const int upButton = 2;
void setup() {
  pinMode(winchMotor, OUTPUT);
  pinMode(topLimit, INPUT_PULLUP);
  pinMode(bottomLimit, INPUT_PULLUP);
  pinMode(upButton, INPUT_PULLUP);
}
void loop() {
  if (digitalRead(topLimit) && digitalRead(bottomLimit) && !digitalRead(upButton)) analogWrite(winchMotor, analogRead(speedKnob) / 4);
  else analogWrite(winchMotor, 0);
}
`,
  ),
  own(
    'remarks-only',
    'nano-v3',
    'relay-module: D4; reed-switch: D5; led: D6; thermistor: A0',
    `
const int p1 = 4; // relay of the pump
const int p2 = 5; // reed contact in the lid
const int p3 = 6; // green lamp
const int p4 = A0; // thermistor in the water
void setup() { pinMode(p1, OUTPUT); pinMode(p2, INPUT_PULLUP); pinMode(p3, OUTPUT); }
void loop() { digitalWrite(p1, digitalRead(p2)); digitalWrite(p3, analogRead(p4) > 512); }
`,
  ),
];
