#pragma once
struct Keys {
  const uint8_t pins[3] = {2, 3, 4};
  void begin() { for (uint8_t p : pins) pinMode(p, INPUT_PULLUP); }
  bool down(int i) { return digitalRead(pins[i]) == LOW; }
};
