/*
 * The recorder's part for tones, in an object of its own: the core's tones take a timer's interrupt for themselves, and
 * a sketch that makes no tones may want it.
 */
#include <Arduino.h>

enum { TONE = 6, TONE_OFF };

#define CALLER ((uint16_t)(uintptr_t)__builtin_return_address(0))

void record_call(uint16_t place, uint8_t function, uint8_t pin, uint16_t value);

/* tone and noTone are C++ functions: reached by their names in the object file. */
void real_tone(uint8_t pin, unsigned int frequency, unsigned long duration) __asm__("_Z4tonehjm");
void real_noTone(uint8_t pin) __asm__("_Z6noToneh");

void recorded_tone(uint8_t pin, unsigned int frequency, unsigned long duration) {
  record_call(CALLER, TONE, pin, frequency);
  real_tone(pin, frequency, duration);
}

void recorded_noTone(uint8_t pin) {
  record_call(CALLER, TONE_OFF, pin, 0);
  real_noTone(pin);
}
