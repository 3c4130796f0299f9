#include <avr/io.h>
#ifndef sbi
#define sbi(sfr, bit) (_SFR_BYTE(sfr) |= _BV(bit))
#endif
#ifndef cbi
#define cbi(sfr, bit) (_SFR_BYTE(sfr) &= ~_BV(bit))
#endif
void setup() {
  bitSet(DDRD, 4);
  bitSet(DDRD, DDD5);
  sbi(DDRB, 1);
  bitWrite(DDRB, 2, 1);
  bitClear(DDRC, 0);
  sbi(PORTC, 0);
}
void loop() {
  bitSet(PORTD, 4);
  bitClear(PORTD, PD5);
  sbi(PORTB, PB1);
  bitWrite(PORTB, 2, bitRead(PINC, 0));
  delay(10);
  cbi(PORTB, PB1);
  PORTD ^= _BV(PD5) | bit(PD4);
  delay(10);
}
