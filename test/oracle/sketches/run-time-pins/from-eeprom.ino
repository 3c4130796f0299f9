// Which pins are fitted is written into the board when it is made.
#include <EEPROM.h>
byte lampPin;
void setup() {
  lampPin = EEPROM.read(0);
  if (lampPin > 19) lampPin = 13;
  pinMode(lampPin, OUTPUT);
}
void loop() {
  digitalWrite(lampPin, HIGH);
  delay(20);
  digitalWrite(lampPin, LOW);
  delay(20);
}
