#pragma once
#include <Arduino.h>
#include <Servo.h>

class Gate {
 public:
  Gate(uint8_t servoPin, uint8_t upPin, uint8_t downPin)
      : servoPin(servoPin), upPin(upPin), downPin(downPin) {}
  void begin();
  void run(bool wanted);

 private:
  const uint8_t servoPin;
  const uint8_t upPin;
  const uint8_t downPin;
  int angle = 90;
  Servo motor;
};
