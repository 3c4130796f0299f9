#include "config.h"

Effect effects[EFFECT_COUNT];

void setup() {
  DEBUG_BEGIN();
  effects[0].begin(PIN_LIGHT, KIND_STEADY);
  effects[1].begin(PIN_FLICKER, KIND_RANDOM);
  effects[2].begin(PIN_FAN, KIND_STEADY);
  pinMode(PIN_DOOR_SENSOR, INPUT_PULLUP);
  for (byte i = 0; i < FLOORS; i++) pinMode(FLOOR_LAMPS[i], OUTPUT);
}

void loop() {
  bool closed = digitalRead(PIN_DOOR_SENSOR) == LOW;
  for (auto& effect : effects) effect.run(closed);
  if (closed) ride();
}
