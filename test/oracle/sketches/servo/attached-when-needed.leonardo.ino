#include <Servo.h>
Servo hatch;
void setup() { pinMode(8, INPUT_PULLUP); }
void loop() {
  if (digitalRead(8) == LOW) {
    hatch.attach(10);
    hatch.writeMicroseconds(1800);
    delay(20);
    hatch.detach();
  }
}
