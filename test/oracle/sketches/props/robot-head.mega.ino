#include <Servo.h>
// Servos in a table with limits; scripted moves
struct Joint { Servo servo; int pin; int low; int high; };
Joint joints[] = {
  {Servo(), 2, 10, 170},
  {Servo(), 3, 40, 140},
  {Servo(), 4, 0, 60},
};
struct Move { uint8_t joint; int angle; unsigned wait; };
const Move nod[] = {{0, 90, 10}, {1, 50, 10}, {1, 120, 20}, {2, 30, 5}};
const int eyePins[] = {10, 11};
const int mouth[5] = {30, 31, 32, 33, 34};

int micPin = A8;

template <typename T, size_t N> constexpr size_t lengthOf(T (&)[N]) { return N; }

void setup() {
  for (size_t i = 0; i < lengthOf(joints); i++) joints[i].servo.attach(joints[i].pin);
  for (auto pin : eyePins) pinMode(pin, OUTPUT);
  for (int i = 0; i < 5; i++) pinMode(mouth[i], OUTPUT);
}

void perform(const Move *moves, size_t count) {
  while (count--) {
    const Move &m = *moves++;
    Joint &j = joints[m.joint];
    j.servo.write(constrain(m.angle, j.low, j.high));
    delay(m.wait);
  }
}

void speak(int level) {
  int lit = map(level, 0, 1023, 0, 5);
  for (int i = 0; i < 5; i++) digitalWrite(mouth[i], i < lit);
}

void loop() {
  perform(nod, lengthOf(nod));
  speak(analogRead(micPin));
  for (int b = 0; b < 256; b += 51) {
    analogWrite(eyePins[0], b);
    analogWrite(eyePins[1], 255 - b);
    delay(5);
  }
}
