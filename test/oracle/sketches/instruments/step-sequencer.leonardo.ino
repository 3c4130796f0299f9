#include "Arduino.h"
// 8 steps, 3 voices, tempo knob
#define TRIG_KICK  2
#define TRIG_SNARE 3
#define TRIG_HAT   4
#define TEMPO_KNOB A5

static const uint8_t STEP_LED[8] = { 5, 6, 7, 8, 9, 10, 11, 12 };
typedef enum { KICK, SNARE, HAT, VOICES } voice_t;
static const uint8_t TRIG[VOICES] = { [KICK] = TRIG_KICK, [SNARE] = TRIG_SNARE, [HAT] = TRIG_HAT };
static const uint8_t PATTERN[VOICES] = { 0b10001000, 0b00100010, 0b10101010 };

static uint8_t at;

static void trigger(voice_t v) {
  digitalWrite(TRIG[v], HIGH);
  delay(5);
  digitalWrite(TRIG[v], LOW);
}

static void advance(void) {
  digitalWrite(STEP_LED[at], LOW);
  at = (at + 1) & 7;
  digitalWrite(STEP_LED[at], HIGH);
  for (int v = KICK; v < VOICES; v++) {
    if (PATTERN[v] & (0x80 >> at)) trigger((voice_t)v);
  }
}

void setup() {
  for (uint8_t i = 0; i < 8; i++) pinMode(STEP_LED[i], OUTPUT);
  for (uint8_t v = 0; v < VOICES; v++) {
    pinMode(TRIG[v], OUTPUT);
    digitalWrite(TRIG[v], LOW);
  }
}

void loop() {
  advance();
  delay(map(analogRead(TEMPO_KNOB), 0, 1023, 400, 80));
}
