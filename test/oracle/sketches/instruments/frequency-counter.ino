// Counts edges on T1 (pin 5); gate by timer 2; result over serial
#include <avr/interrupt.h>

#define GATE_LED 13

volatile uint16_t overflows;
volatile uint8_t ticks;
volatile bool ready;

ISR(TIMER1_OVF_vect) { overflows++; }

ISR(TIMER2_COMPA_vect) {
  if (++ticks < 25) return;
  ticks = 0;
  ready = true;
  PORTB ^= _BV(PB5);
}

void setup() {
  Serial.begin(115200);
  pinMode(GATE_LED, OUTPUT);
  pinMode(5, INPUT_PULLUP);
  noInterrupts();
  TCCR1A = 0;
  TCCR1B = _BV(CS12) | _BV(CS11) | _BV(CS10);
  TIMSK1 = _BV(TOIE1);
  TCCR2A = _BV(WGM21);
  TCCR2B = _BV(CS22) | _BV(CS21) | _BV(CS20);
  OCR2A = 155;
  TIMSK2 = _BV(OCIE2A);
  interrupts();
}

void loop() {
  if (!ready) return;
  ready = false;
  unsigned long count = ((unsigned long)overflows << 16) + TCNT1;
  TCNT1 = 0;
  overflows = 0;
  Serial.println(count);
}
