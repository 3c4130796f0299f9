#ifndef SHARED_H
#define SHARED_H
#include <Arduino.h>
extern int motorPin;
void motorBegin();
bool motorStep();
#endif
