#include "pins.h"
#include "Eye.h"

Eye left(PIN_EYE_LEFT);
Eye right(PIN_EYE_RIGHT);
Eye* eyes[2] = { &left, &right };

void setup() {
  left.begin();
  right.begin();
  roarBegin();
  tailBegin(PIN_TAIL_A, PIN_TAIL_B);
  pinMode(PIN_SENSOR, INPUT);
}

void loop() {
  for (int i = 0; i < 2; i++) eyes[i]->update(millis());
  if (digitalRead(PIN_SENSOR) == HIGH) {
    roar();
    tailSwing();
  }
}
