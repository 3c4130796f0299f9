// Ferry board: the next departure on a display that speaks I2C.
#include <Wire.h>
#include <U8g2lib.h>

U8G2_SSD1306_128X64_NONAME_F_HW_I2C screen(U8G2_R0, U8X8_PIN_NONE);
unsigned long drawnAt = 0;

void setup() {
  screen.begin();
}

void loop() {
  if (millis() - drawnAt < 1000) return;
  drawnAt = millis();
  screen.clearBuffer();
  screen.drawStr(0, 20, "Ferry");
  screen.sendBuffer();
}
