#pragma once
#include <Arduino.h>
class Beacon {
  public:
    Beacon(uint8_t pin, unsigned long period);
    void begin();
    void update();
  private:
    uint8_t pin_;
    unsigned long period_;
    unsigned long last_ = 0;
    bool on_ = false;
};
