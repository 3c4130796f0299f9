/** A pin is dimmed by a timer that a tone, a servo or a library has taken. */

import type { Related, Severity } from '../base/finding';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { freePins, moveFixes } from './support/rewire';
import { type TimerTaken, takenTimers } from './support/timers';
import { isMeant, listWords, relatedOf } from './support/views';

interface Detail {
  /** The pin that loses its PWM; absent where two libraries want the timer. */
  readonly pin?: string;
  readonly timer: string;
  readonly call: string;
  /** The other library's call. */
  readonly other?: string;
  readonly sounds: boolean;
  /** Free pins whose timer is nobody's. */
  readonly can: readonly string[];
}

export default defineRule<Detail>({
  id: 'timer-shared',
  title: 'Two things of the sketch want the same timer.',
  why:
    'A chip has few timers, and whoever takes one sets its rate. A servo kills the PWM of two pins that have nothing to ' +
    'do with it, and a tone makes a lamp or a fan on them jump.',
  source:
    'Tone.cpp and wiring_analog.c of the board-support core for AVR 1.8.7; ServoTimers.h of the Servo library; the files ' +
    'of the boards and libraries',
  severity: 'error',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const taken = takenTimers(subject);
    for (const [index, one] of taken.entries()) {
      yield* dimmed(subject, one, taken);
      const before = taken.slice(0, index).find((other) => other.timer === one.timer);
      if (!before) continue;
      yield {
        identity: one.timer,
        span: one.use.span,
        related: [{ message: `${before.use.call} takes ${one.timer} here`, span: before.use.span }],
        detail: { timer: one.timer, call: before.use.call, other: one.use.call, sounds: false, can: [] },
      };
    }
  },
  message: ({ pin, timer, call, other, sounds, can }) => {
    if (pin === undefined)
      return `${other} and ${call} both want ${timer}: only one of them can have it. Use a library that works on another timer.`;
    const effect = sounds
      ? `while a tone sounds, ${call} has ${timer}, and the PWM of ${pin} stops or jumps`
      : `${call} has ${timer}, and ${pin} gets no PWM from it any more`;
    const way =
      can.length > 0
        ? `Free pins with a timer of their own: ${listWords(can)}.`
        : 'No free pin with another timer is left.';
    return `analogWrite dims ${pin} by ${timer}, but ${effect}. ${way}`;
  },
  fixes: ({ pin, can }, subject) => (pin === undefined ? [] : moveFixes(subject, pin, can)),
  examples: [
    {
      about: 'a servo on D6 takes the timer of the lamp on D9',
      build: `
//- sketch.ino
#include <Servo.h>
const int beacon = 9;
Servo boom;
void setup() {
  boom.attach(6);
  pinMode(beacon, OUTPUT);
}
void loop() {
  analogWrite(beacon, 80);
//            ^^^^^^ timer-shared [ask] [ask]: Servo.attach has timer1, and D9 gets no PWM from it any more
  boom.write(90);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" }, // on the quay
    "R1": { "kind": "resistor", "value": "470" },
    "boom": { "kind": "servo" },
    "pack": { "kind": "battery", "volts": "4.8", "capacity": "2000 mAh" }
  },
  "wires": [
    { "path": ["D9", "R1", "beacon", "GND"] },
    { "from": "D6", "to": "boom.signal" },
    { "from": "pack.+", "to": "boom.+" },
    { "from": "boom.-", "to": "GND" },
    { "from": "pack.-", "to": "boom.-" }
  ]
}
`,
      fixed: `
//- sketch.ino
#include <Servo.h>
const int beacon = 3;
Servo boom;
void setup() {
  boom.attach(6);
  pinMode(beacon, OUTPUT);
}
void loop() {
  analogWrite(beacon, 80);
  boom.write(90);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" }, // on the quay
    "R1": { "kind": "resistor", "value": "470" },
    "boom": { "kind": "servo" },
    "pack": { "kind": "battery", "volts": "4.8", "capacity": "2000 mAh" }
  },
  "wires": [
    { "path": ["D3", "R1", "beacon", "GND"] },
    { "from": "D6", "to": "boom.signal" },
    { "from": "pack.+", "to": "boom.+" },
    { "from": "boom.-", "to": "GND" },
    { "from": "pack.-", "to": "boom.-" }
  ]
}
`,
    },
    tones('a tone and a lamp that is dimmed by the tone’s timer', 'leonardo', 5, 'warns'),
    tones('the same pins on a board whose tone has another timer', 'uno-r3', 5, 'silent'),
    tones('the same on D3, which this chip’s tone disturbs', 'uno-r3', 3, 'warns'),
    tones('a lamp on D45 of the large board, and a tone', 'mega-2560', 45, 'silent'),
  ],
});

/** Pins that analogWrite dims by a taken timer. */
function* dimmed(subject: Subject, { timer, use: taker }: TimerTaken, taken: readonly TimerTaken[]) {
  const sounds = taker.action === 'tone' && taker.call === 'tone';
  for (const view of subject.pins) {
    if (view.pin.pwm !== timer) continue;
    const use = view.uses.find((one) => one.call === 'analogWrite' && isMeant(one));
    // A pin that sounds and is dimmed in turn gives its own timer back to itself.
    if (!use || (sounds && view.uses.some((one) => one.action === 'tone'))) continue;
    const related: Related[] = [
      { message: `${taker.call} takes ${timer} here`, span: taker.span },
      ...relatedOf(view, use),
    ];
    const severity: Severity = sounds ? 'warning' : 'error';
    const isFree = ({ pin }: PinView) => pin.pwm !== undefined && !taken.some((one) => one.timer === pin.pwm);
    const can = freePins(subject, isFree).map((one) => one.pin.id);
    const { id: pin } = view.pin;
    yield {
      identity: pin,
      span: use.span,
      related,
      severity,
      detail: { pin, timer, call: taker.call, sounds, can },
    };
  }
}

function tones(about: string, board: string, pin: number, wanted: 'warns' | 'silent') {
  const mark = `\n//            ^^^^^^ timer-shared [ask] [ask]: while a tone sounds, tone has timer`;
  return {
    about,
    build: `
//- sketch.ino
const int beacon = ${pin};
void setup() { pinMode(beacon, OUTPUT); }
void loop() {
  analogWrite(beacon, 80);${wanted === 'warns' ? mark : ''}
  tone(8, 440);
}
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": {
    "beacon": { "kind": "led", "colour": "green" },
    "R1": { "kind": "resistor", "value": "470" },
    "horn": { "kind": "buzzer", "drive": "passive" }
  },
  "wires": [
    { "path": ["D${pin}", "R1", "beacon", "GND"] },
    { "from": "D8", "to": "horn.+" },
    { "from": "horn.-", "to": "GND" }
  ]
}
`,
  };
}
