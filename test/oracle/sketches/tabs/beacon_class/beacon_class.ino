#include "Beacon.h"
Beacon white(6, 40);
Beacon red(A1, 25);
void setup() {
  white.begin();
  red.begin();
}
void loop() {
  white.update();
  red.update();
}
