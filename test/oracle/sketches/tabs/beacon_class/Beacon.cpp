#include "Beacon.h"
Beacon::Beacon(uint8_t pin, unsigned long period) : pin_(pin), period_(period) {}
void Beacon::begin() { pinMode(pin_, OUTPUT); }
void Beacon::update() {
  if (millis() - last_ < period_) return;
  last_ = millis();
  on_ = !on_;
  digitalWrite(pin_, on_ ? HIGH : LOW);
}
