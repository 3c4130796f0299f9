#include <Servo.h>
class Arm {
  public:
    Arm(int shoulder, int wrist, int magnet) : shoulderPin(shoulder), wristPin(wrist), magnet(magnet) {}
    void begin() {
      shoulder.attach(shoulderPin);
      wrist.attach(wristPin);
      pinMode(magnet, OUTPUT);
    }
    void pose(int a, int b, bool hold) {
      shoulder.write(a);
      wrist.write(b);
      digitalWrite(magnet, hold);
    }
  private:
    int shoulderPin, wristPin, magnet;
    Servo shoulder, wrist;
};
Arm arm(44, 45, 46);
void setup() { arm.begin(); }
void loop() {
  arm.pose(20, 90, true);
  delay(20);
  arm.pose(120, 30, false);
  delay(20);
}
