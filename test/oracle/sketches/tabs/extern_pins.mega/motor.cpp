#include "shared.h"
static const uint8_t brake = 9;
namespace { uint8_t duty = 40; }
void motorBegin() {
  pinMode(motorPin, OUTPUT);
  pinMode(brake, OUTPUT);
}
bool motorStep() {
  duty += 20;
  analogWrite(motorPin, duty);
  digitalWrite(brake, duty > 200);
  return duty & 32;
}
