#include <Servo.h>
#include <Wire.h>
#include <EEPROM.h>
class Axis {
  Servo servo; uint8_t pin; int at, goal;
public:
  Axis() : pin(0), at(90), goal(90) {}
  Axis(uint8_t p) : pin(p), at(90), goal(90) {}
  void begin(uint8_t p) { pin = p; begin(); }
  void begin() { servo.attach(pin, 600, 2400); servo.write(at); }
  void to(int angle) { goal = constrain(angle, 0, 180); }
  bool tick() { if (at == goal) return false; at += at < goal ? 1 : -1; servo.write(at); return true; }
};
Axis pan, tilt(3);
Axis extra[2] = {Axis(4), Axis(5)};
const struct { int pan, tilt; } points[] = {{10, 20}, {170, 60}, {90, 90}};
uint8_t next_;
void setup() {
  pan.begin(2);
  tilt.begin();
  for (auto &e : extra) e.begin();
  Wire.begin();
  pinMode(LED_BUILTIN, OUTPUT);
}
void loop() {
  bool moving = pan.tick() | tilt.tick();
  for (auto &e : extra) moving |= e.tick();
  digitalWrite(LED_BUILTIN, moving);
  if (!moving) {
    next_ = (next_ + 1) % (sizeof points / sizeof points[0]);
    pan.to(points[next_].pan);
    tilt.to(points[next_].tilt);
    extra[next_ & 1].to(EEPROM.read(next_));
  }
  delay(1);
}
