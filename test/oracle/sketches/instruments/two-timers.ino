// timers: CTC with toggle on OC0A while millis stays, phase correct on OC1A and OC1B, fast PWM by masks
#define PWM_A 9
#define PWM_B 10
static inline void pwmInit(void) {
  pinMode(PWM_A, OUTPUT);
  pinMode(PWM_B, OUTPUT);
  TCCR1A = (1 << COM1A1) | (1 << COM1B1) | (1 << WGM11);
  TCCR1B = (1 << WGM13) | (1 << CS10);
  ICR1 = 400;
}
void setup() {
  pwmInit();
  DDRB |= (1 << PB3);
  TCCR2A = 0x42;
  TCCR2B = 0x04;
  OCR2A = 100;
}
void loop() {
  for (int i = 0; i <= 400; i += 100) { OCR1A = i; OCR1B = 400 - i; delay(10); }
  if (analogRead(A0) > 500) TCCR2A &= ~_BV(COM2A0); else TCCR2A |= _BV(COM2A0);
}
