// Ferry model. One tab for each thing.
#include "pins.h"

void setup() {
  lightsBegin();
  engineBegin();
  pinMode(START_KEY, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(START_KEY) == LOW) {
    lightsSet(true);
    engineRun(160);
    delay(40);
    engineRun(0);
  }
  lightsSet(false);
  delay(10);
}
