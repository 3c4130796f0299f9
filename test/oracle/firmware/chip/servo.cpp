#include "Servo.h"

extern "C" void record_servo(uint16_t place, uint8_t pin);

Servo::Servo() : pin_(-1), shortest_(MIN_PULSE_WIDTH), longest_(MAX_PULSE_WIDTH), width_(DEFAULT_PULSE_WIDTH) {}

#define CALLER ((uint16_t)(uintptr_t)__builtin_return_address(0))

uint8_t Servo::attach(int pin) {
  record_servo(CALLER, pin);
  return start(pin, MIN_PULSE_WIDTH, MAX_PULSE_WIDTH);
}

uint8_t Servo::attach(int pin, int shortest, int longest) {
  record_servo(CALLER, pin);
  return start(pin, shortest, longest);
}

uint8_t Servo::start(int pin, int shortest, int longest) {
  pin_ = pin;
  shortest_ = shortest;
  longest_ = longest;
  pinMode(pin, OUTPUT);
  pulse();
  return 0;
}

void Servo::detach() { pin_ = -1; }

void Servo::write(int value) {
  writeMicroseconds(value < shortest_ ? map(constrain(value, 0, 180), 0, 180, shortest_, longest_) : value);
}

void Servo::writeMicroseconds(int width) {
  width_ = constrain(width, shortest_, longest_);
  pulse();
}

int Servo::read() { return map(width_, shortest_, longest_, 0, 180); }

int Servo::readMicroseconds() { return width_; }

bool Servo::attached() { return pin_ >= 0; }

void Servo::pulse() {
  if (pin_ < 0) {
    return;
  }
  digitalWrite(pin_, HIGH);
  delayMicroseconds(width_);
  digitalWrite(pin_, LOW);
}
