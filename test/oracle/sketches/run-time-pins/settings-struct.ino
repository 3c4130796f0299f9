#include <EEPROM.h>
struct Settings { byte version, lamp, key; };
Settings s;
void setup() {
  EEPROM.get(10, s);
  if (s.version != 3) {
    s.version = 3;
    s.lamp = 6;
    s.key = 4;
  }
  pinMode(s.lamp, OUTPUT);
  pinMode(s.key, INPUT_PULLUP);
}
void loop() {
  digitalWrite(s.lamp, !digitalRead(s.key));
  delay(3);
}
