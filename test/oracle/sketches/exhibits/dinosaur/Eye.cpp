#include "Eye.h"

Eye::Eye(uint8_t pin) { this->pin = pin; }

void Eye::begin() { pinMode(pin, OUTPUT); }

void Eye::update(unsigned long now) {
  if (now < next) return;
  next = now + 10;
  level += step;
  if (level == 0 || level == 255) step = -step;
  analogWrite(pin, level);
}
