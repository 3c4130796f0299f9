// Two digits, seven segments each, common cathodes on 12 and 13.
const byte segments[7] = {2, 3, 4, 5, 6, 7, 8};
const byte digits[2] = {12, 13};
const byte shapes[10] PROGMEM = {0x3F, 0x06, 0x5B, 0x4F, 0x66, 0x6D, 0x7D, 0x07, 0x7F, 0x6F};
byte value = 0;
unsigned long counted = 0;
void draw(byte digit, byte number) {
  digitalWrite(digits[!digit], HIGH);
  byte shape = pgm_read_byte(&shapes[number]);
  for (byte s = 0; s < 7; s++) {
    digitalWrite(segments[s], bitRead(shape, s));
  }
  digitalWrite(digits[digit], LOW);
}
void setup() {
  for (byte pin : segments) pinMode(pin, OUTPUT);
  for (byte pin : digits) pinMode(pin, OUTPUT);
}
void loop() {
  draw(0, value / 10);
  delay(2);
  draw(1, value % 10);
  delay(2);
  if (millis() - counted > 20) {
    counted = millis();
    if (++value == 100) value = 0;
  }
}
