#pragma once

inline bool isRight(char key) {
  static const char wanted[] = "1805";
  static unsigned char at = 0;
  at = key == wanted[at] ? at + 1 : 0;
  if (at < 4) return false;
  at = 0;
  return true;
}
