// Engine telegraph: the handle is an encoder, the pointer a servo.
#include <Encoder.h>
#include <Servo.h>

Encoder handle(2, 3);
Servo pointer;
const int pointerPin = 6;

void setup() {
  pointer.attach(pointerPin);
}

void loop() {
  long position = handle.read();
  pointer.write(constrain(90 + position, 0, 180));
  delay(15);
}
