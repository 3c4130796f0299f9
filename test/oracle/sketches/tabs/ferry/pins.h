#ifndef PINS_H
#define PINS_H
#define START_KEY 2
#define LIGHT_FIRST 7
#define LIGHT_COUNT 3
const int enginePwm = 5;
const int engineDir = 4;
#endif
