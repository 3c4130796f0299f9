#include <avr/pgmspace.h>

const uint8_t outs[] PROGMEM = { 4, 7, 8, 12 };
const uint16_t notes[] PROGMEM = { 262, 330, 392, 523 };
#define OUTS (sizeof(outs))

void setup() {
  for (uint8_t i = 0; i < OUTS; i++) {
    pinMode(pgm_read_byte(&outs[i]), OUTPUT);
  }
  pinMode(3, OUTPUT);
}

void loop() {
  for (uint8_t i = 0; i < OUTS; i++) {
    uint8_t pin = pgm_read_byte(outs + i);
    digitalWrite(pin, HIGH);
    tone(3, pgm_read_word(&notes[i]), 10);
    delay(20);
    digitalWrite(pin, LOW);
  }
}
