#pragma once
struct Lamps {
  static constexpr uint8_t first = 8;
  void begin() { for (uint8_t i = 0; i < 3; i++) pinMode(first + i, OUTPUT); }
  void set(int i, bool on) { digitalWrite(first + i, on); }
};
