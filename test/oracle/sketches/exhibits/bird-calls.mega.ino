/* Twelve birds, one button and one lamp each. Pressing plays the call. */
#include <avr/pgmspace.h>
#include <stdint.h>

#define BIRDS (sizeof birds / sizeof birds[0])

typedef struct bird {
  uint8_t key;
  uint8_t lamp;
  uint16_t pitch;
} bird_t;

static const bird_t birds[] PROGMEM = {
  {22, 23, 880},  {24, 25, 990},  {26, 27, 1200}, {28, 29, 700},
  {30, 31, 640},  {32, 33, 2100}, {34, 35, 1900}, {36, 37, 320},
  {38, 39, 450},  {40, 41, 560},  {42, 43, 1500}, {44, 45, 1800},
};
static const uint8_t SPEAKER = 9;

static bird_t fetch(uint8_t i) {
  bird_t b;
  memcpy_P(&b, &birds[i], sizeof b);
  return b;
}

void setup(void) {
  for (uint8_t i = 0; i < BIRDS; i++) {
    pinMode(pgm_read_byte(&birds[i].key), INPUT_PULLUP);
    pinMode(pgm_read_byte(&birds[i].lamp), OUTPUT);
  }
}

void loop(void) {
  uint8_t i;
  for (i = 0; i != BIRDS; ++i) {
    uint8_t key = pgm_read_byte(&(birds[i].key));
    uint8_t lamp = pgm_read_byte(&(birds[i].lamp));
    uint16_t pitch = pgm_read_word(&(birds[i].pitch));
    if (digitalRead(key)) {
      digitalWrite(lamp, LOW);
      continue;
    }
    digitalWrite(lamp, HIGH);
    tone(SPEAKER, pitch, 30);
  }
}
