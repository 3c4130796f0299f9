// Square wave on OC1A by the timer itself, burst gate on OC0B, both without the core's calls
static void toneStart(uint16_t top) {
  DDRB |= _BV(DDB1);
  TCCR1A = _BV(COM1A0);
  TCCR1B = _BV(WGM12) | _BV(CS11);
  OCR1A = top;
}

static void toneStop(void) {
  TCCR1A &= ~(_BV(COM1A1) | _BV(COM1A0));
  PORTB &= ~_BV(PORTB1);
}

static void fader(void) {
  DDRD |= 1 << DDD3;
  TCCR2A = (1 << COM2B1) | (1 << WGM21) | (1 << WGM20);
  TCCR2B = 1 << CS20;
  OCR2B = 40;
}

void setup() {
  fader();
  pinMode(2, INPUT_PULLUP);
}

void loop() {
  for (uint16_t top = 4000; top > 500; top -= 500) {
    toneStart(top);
    delay(10);
    OCR2B += 20;
  }
  toneStop();
  if (digitalRead(2) == HIGH) delay(20);
}
