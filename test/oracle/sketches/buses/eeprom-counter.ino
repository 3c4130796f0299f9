#include <EEPROM.h>
#define KEY 3
#define LAMP 6
byte count;
void setup() {
  count = EEPROM.read(5);
  pinMode(KEY, INPUT_PULLUP);
  pinMode(LAMP, OUTPUT);
}
void loop() {
  if (digitalRead(KEY) == LOW) {
    count++;
    EEPROM.update(5, count);
    delay(10);
  }
  for (byte i = 0; i < (count & 3); i++) {
    digitalWrite(LAMP, HIGH); delay(3);
    digitalWrite(LAMP, LOW); delay(3);
  }
  delay(20);
}
