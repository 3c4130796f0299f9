// Eight lamps on port D would need the serial pins, so six on PD2..PD7 and two on PB0, PB1.
void setup() {
  DDRD |= 0b11111100;
  DDRB |= (1 << 0) | (1 << PB1);
  PORTD &= ~0xFC;
}

void show(byte pattern) {
  PORTD = (PORTD & 0x03) | (pattern & 0xFC);
  PORTB = (PORTB & ~0x03) | (pattern & 0x03);
}

void loop() {
  for (byte i = 0; i < 8; i++) {
    show(1 << i);
    delay(60);
  }
  PIND = _BV(7);
  delay(60);
}
