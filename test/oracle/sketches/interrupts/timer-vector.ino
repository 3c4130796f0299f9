// A tick from timer 2 every millisecond, no library.
volatile uint8_t ticks;
ISR(TIMER2_COMPA_vect) {
  if (++ticks >= 10) {
    ticks = 0;
    digitalWrite(7, !digitalRead(7));
  }
}
void setup() {
  pinMode(7, OUTPUT);
  cli();
  TCCR2A = _BV(WGM21);
  TCCR2B = _BV(CS22);
  OCR2A = 249;
  TIMSK2 |= _BV(OCIE2A);
  sei();
}
void loop() {
  digitalWrite(8, HIGH);
  delay(3);
}
