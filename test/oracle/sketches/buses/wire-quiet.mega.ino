// The compass is asked once a second; nobody answers on the bench.
#include <Wire.h>
const byte needle = 5, fault = 6;
void setup() {
  Wire.begin();
  pinMode(needle, OUTPUT);
  pinMode(fault, OUTPUT);
}
void loop() {
  analogWrite(needle, analogRead(A0) / 4);
  digitalWrite(fault, digitalRead(SDA) == LOW);
  delay(10);
}
