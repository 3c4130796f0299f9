// Output register on the SPI bus, latch on 10, reset of the register on 9.
#include <SPI.h>
const byte latch = 10, clear_ = 9;
byte rows = 1;
void setup() {
  pinMode(latch, OUTPUT);
  pinMode(clear_, OUTPUT);
  digitalWrite(clear_, HIGH);
  SPI.begin();
  SPI.beginTransaction(SPISettings(1000000, MSBFIRST, SPI_MODE0));
}
void loop() {
  digitalWrite(latch, LOW);
  SPI.transfer(rows);
  digitalWrite(latch, HIGH);
  rows = rows == 0x80 ? 1 : rows << 1;
  delay(10);
}
