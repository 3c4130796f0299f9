#pragma once
#include <Arduino.h>

const int GATE_COUNT = 2;
const uint8_t GATE_PINS[GATE_COUNT] = {2, 3};

class Gate {
  uint8_t pin_;
  bool last_ = true;
 public:
  Gate(uint8_t pin) : pin_(pin) {}
  void begin() { pinMode(pin_, INPUT_PULLUP); }
  bool passed() {
    bool now = digitalRead(pin_);
    bool edge = last_ && !now;
    last_ = now;
    return edge;
  }
};
