#include "shared.h"
const int lampPin = 24;
int motorPin = 8;
void setup() {
  pinMode(lampPin, OUTPUT);
  motorBegin();
}
void loop() {
  digitalWrite(lampPin, motorStep());
  delay(6);
}
