// Tide clock: time from the clock chip, the tide on the display. Two devices on one bus.
#include <Wire.h>
#include <LiquidCrystal_I2C.h>

LiquidCrystal_I2C screen(0x27, 16, 2);
const uint8_t CLOCK_CHIP = 0x68;
const byte setKey = 4;
unsigned long shownAt = 0;

byte readClock(byte reg) {
  Wire.beginTransmission(CLOCK_CHIP);
  Wire.write(reg);
  Wire.endTransmission();
  Wire.requestFrom(CLOCK_CHIP, (uint8_t)1);
  return Wire.read();
}

void setup() {
  Wire.begin();
  pinMode(setKey, INPUT_PULLUP);
  screen.init();
  screen.backlight();
}

void loop() {
  if (millis() - shownAt < 500) return;
  shownAt = millis();
  screen.setCursor(0, 0);
  screen.print(readClock(digitalRead(setKey) == LOW ? 1 : 2), HEX);
}
