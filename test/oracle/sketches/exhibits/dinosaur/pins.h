#ifndef PINS_H
#define PINS_H
#define PIN_EYE_LEFT 5
#define PIN_EYE_RIGHT 6
#define PIN_SPEAKER 8
#define PIN_SMOKE 7
#define PIN_TAIL_A 11
#define PIN_TAIL_B 12
#define PIN_SENSOR 2
#endif
