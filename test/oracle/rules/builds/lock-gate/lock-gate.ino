// Lock chamber: a servo moves the gate, two limit switches say where it is.
#include <Servo.h>
#include "Gate.h"

const uint8_t openButton = 2;
const uint8_t gatePin = 9;

Gate gate(gatePin, 4, 5);

void setup() {
  pinMode(openButton, INPUT_PULLUP);
  gate.begin();
}

void loop() {
  gate.run(digitalRead(openButton) == LOW);
  delay(20);
}
