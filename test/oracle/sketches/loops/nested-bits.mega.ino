// 4 x 8 lamps on pins 22..53: a counter, one byte a row
void setup() {
  for (byte row = 0; row < 4; row++)
    for (byte bit = 0; bit < 8; bit++)
      pinMode(22 + row * 8 + bit, OUTPUT);
}
unsigned long value = 0;
void loop() {
  for (byte row = 0; row < 4; row++)
    for (byte bit = 0; bit < 8; bit++)
      digitalWrite(22 + row * 8 + bit, bitRead(value, row * 8 + bit));
  value = value * 1103515245UL + 12345UL;
  delay(10);
}
