void setup() {
  DDRC |= (1 << 7);      // 13
  DDRB |= 0xF0;          // 8 to 11
}
void loop() {
  PINC = 1 << 7;
  PINB = 0x30;
  delay(8);
  PORTB &= (uint8_t)~0xC0;
  PORTB |= 0x80;
  delay(8);
}
