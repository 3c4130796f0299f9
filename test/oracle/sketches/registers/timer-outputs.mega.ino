// Outputs of timers, one by one, and given back
void setup() {
  DDRB |= _BV(PB5) | _BV(PB6) | _BV(PB7);
  DDRE |= _BV(PE3);
  TCCR1A |= _BV(COM1A1) | _BV(COM1B1) | _BV(WGM10);
  TCCR1B = _BV(CS11);
  OCR1A = 100;
  OCR1B = 30;
}
void loop() {
  TCCR3A = (TCCR3A & ~(3 << COM3A0)) | (1 << COM3A0);
  OCR3A = 1000;
  delay(10);
  TCCR3A &= 0x3F;
  TCCR1A &= ~_BV(COM1B1);
  if (analogRead(A0) > 500) TCCR1A |= _BV(COM1B1);
  delay(10);
}
