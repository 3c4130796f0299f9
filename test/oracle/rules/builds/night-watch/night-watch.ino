// Night watch: a rack of three devices on SPI, each with its own select line.
#include <SPI.h>

enum { CLOCK_SELECT = 48, STORE_SELECT = 49, PANEL_SELECT = 47 };
const int selects[] = { CLOCK_SELECT, STORE_SELECT, PANEL_SELECT };

void tell(int select, byte value) {
  digitalWrite(select, LOW);
  SPI.transfer(value);
  digitalWrite(select, HIGH);
}

void setup() {
  for (int select : selects) {
    digitalWrite(select, HIGH);
    pinMode(select, OUTPUT);
  }
  SPI.begin();
}

void loop() {
  for (int select : selects) tell(select, 0x55);
  delay(1000);
}
