#pragma once
#include <Arduino.h>

#define DEBUG 0
#if DEBUG
#define DEBUG_BEGIN() Serial.begin(115200)
#define DEBUG_PRINT(x) Serial.println(x)
#else
#define DEBUG_BEGIN()
#define DEBUG_PRINT(x)
#endif

enum { PIN_LIGHT = 3, PIN_FLICKER = 5, PIN_FAN, PIN_DOOR_SENSOR = A0 };
enum { FLOORS = 4, EFFECT_COUNT = 3 };
static const byte FLOOR_LAMPS[FLOORS] = { 8, 9, 10, 11 };

enum Kind { KIND_STEADY, KIND_RANDOM };

class Effect {
  byte m_pin;
  Kind m_kind;
public:
  void begin(byte pin, Kind kind) {
    m_pin = pin;
    m_kind = kind;
    pinMode(m_pin, OUTPUT);
  }
  void run(bool active);
};
