// Range lights by port registers: two lamps on port B in step, a key on port D.
#include <avr/io.h>
#define FRONT PB0
#define REAR PB1
#define KEY PD4

void setup() {
  DDRB |= _BV(FRONT) | _BV(REAR);
  DDRD &= ~_BV(KEY);
  PORTD |= _BV(KEY);
}

void loop() {
  if (PIND & _BV(KEY)) {
    PORTB |= _BV(FRONT);
    PORTB &= ~_BV(REAR);
  } else {
    PORTB |= _BV(FRONT) | _BV(REAR);
  }
}
