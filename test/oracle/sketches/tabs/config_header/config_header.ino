#include "config.h"
#include "board.h"
void setup() {
  pinMode(PIN_SMOKE, OUTPUT);
#if WITH_WHISTLE
  pinMode(PIN_WHISTLE, OUTPUT);
#endif
}
void loop() {
  digitalWrite(PIN_SMOKE, HIGH);
#if WITH_WHISTLE
  tone(PIN_WHISTLE, WHISTLE_HZ, 5);
#endif
  delay(12);
  digitalWrite(PIN_SMOKE, LOW);
  delay(12);
}
