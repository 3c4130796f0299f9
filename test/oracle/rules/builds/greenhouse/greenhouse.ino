// Greenhouse of the botanical room: a sensor on the bus, a lamp when it is dry.
#include <Wire.h>

const uint8_t soilAddress = 0x36;
const int dryLamp = 10;

int readSoil() {
  Wire.beginTransmission(soilAddress);
  Wire.write(0x0F);
  Wire.endTransmission();
  Wire.requestFrom(soilAddress, (uint8_t)2);
  int value = Wire.read() << 8;
  return value | Wire.read();
}

void setup() {
  Wire.begin();
  pinMode(dryLamp, OUTPUT);
}

void loop() {
  digitalWrite(dryLamp, readSoil() < 400 ? HIGH : LOW);
  delay(1000);
}
