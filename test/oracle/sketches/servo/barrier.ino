#include <Servo.h>
Servo barrier;
const int barrierPin = 9, eye = A0, lamp = 4;
void setup() {
  barrier.attach(barrierPin);
  barrier.write(0);
  pinMode(lamp, OUTPUT);
}
void loop() {
  bool train = analogRead(eye) < 400;
  barrier.write(train ? 90 : 0);
  digitalWrite(lamp, train);
  delay(20);
}
