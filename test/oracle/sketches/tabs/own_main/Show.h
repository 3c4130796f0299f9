#pragma once
#include <Arduino.h>
struct Three { uint8_t a, b, c; };
class Show {
  public:
    Show(Three pins) : pins_(pins) {}
    void begin() { pinMode(pins_.a, OUTPUT); pinMode(pins_.b, OUTPUT); pinMode(pins_.c, OUTPUT); }
    void next();
  private:
    uint8_t at(uint8_t i) const { return i == 0 ? pins_.a : i == 1 ? pins_.b : pins_.c; }
    Three pins_;
    uint8_t step_ = 0;
};
