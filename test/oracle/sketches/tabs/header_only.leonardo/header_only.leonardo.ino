#include "keys.hpp"
#include "lamps.hpp"
Keys keys;
Lamps lamps;
void setup() { keys.begin(); lamps.begin(); }
void loop() { for (int i = 0; i < 3; i++) lamps.set(i, keys.down(i)); delay(2); }
