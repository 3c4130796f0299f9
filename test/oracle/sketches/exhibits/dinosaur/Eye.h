#pragma once
#include <Arduino.h>

class Eye {
public:
  explicit Eye(uint8_t pin);
  void begin();
  void update(unsigned long now);
private:
  uint8_t pin;
  uint8_t level = 0;
  int8_t step = 5;
  unsigned long next = 0;
};
