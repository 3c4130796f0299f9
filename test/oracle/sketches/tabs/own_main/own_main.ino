// The core's own main calls these; the work is in a class made there.
#include "Show.h"
Show show({5, 6, 9});
void setup() { show.begin(); }
void loop() { show.next(); delay(5); }
