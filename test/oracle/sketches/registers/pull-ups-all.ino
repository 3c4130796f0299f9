void setup() {
  DDRD &= B00000011;
  PORTD |= B11111100;
  DDRB = B00111111;
}
void loop() {
  byte keys = PIND >> 2;
  PORTB = ~keys & 0x3F;
  delay(2);
}
