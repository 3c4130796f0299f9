#include "Gate.h"

void Gate::begin() {
  pinMode(upPin, INPUT_PULLUP);
  pinMode(downPin, INPUT_PULLUP);
  motor.attach(servoPin);
  motor.write(angle);
}

void Gate::run(bool wanted) {
  bool atTop = digitalRead(upPin) == HIGH;
  bool atBottom = digitalRead(downPin) == HIGH;
  if (wanted && !atTop) {
    angle = min(angle + 1, 170);
  } else if (!wanted && !atBottom) {
    angle = max(angle - 1, 10);
  }
  motor.write(angle);
}
