/* A hobby servo driven by hand: enough to see on a simulated chip which pin a sketch gives to a servo. */
#ifndef ORACLE_SERVO_H
#define ORACLE_SERVO_H

#include <Arduino.h>

#define MIN_PULSE_WIDTH 544
#define MAX_PULSE_WIDTH 2400
#define DEFAULT_PULSE_WIDTH 1500

class Servo {
 public:
  Servo();
  uint8_t attach(int pin);
  uint8_t attach(int pin, int shortest, int longest);
  void detach();
  void write(int degreesOrMicroseconds);
  void writeMicroseconds(int width);
  int read();
  int readMicroseconds();
  bool attached();

 private:
  uint8_t start(int pin, int shortest, int longest);
  void pulse();
  int pin_;
  int shortest_;
  int longest_;
  int width_;
};

#endif
