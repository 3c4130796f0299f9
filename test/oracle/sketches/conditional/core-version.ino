#if ARDUINO >= 100
  #include "Arduino.h"
#else
  #include "WProgram.h"
#endif
#if defined(ARDUINO_ARCH_ESP32)
  const int out = 33;
#elif defined(ARDUINO_ARCH_AVR) && F_CPU > 8000000L
  const int out = 11;
#else
  const int out = 4;
#endif
void setup() { pinMode(out, OUTPUT); }
void loop() { digitalWrite(out, HIGH); delay(12); digitalWrite(out, LOW); delay(12); }
