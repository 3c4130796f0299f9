// Dockside crane: a geared stepper turns the jib, a joystick steers it.
#include <Stepper.h>

const int stepsPerTurn = 2048;
Stepper jib(stepsPerTurn, 22, 24, 23, 25);

#define STICK_X A8
#define STICK_Y A9
#define HOME_SWITCH 30

void setup() {
  jib.setSpeed(10);
  pinMode(HOME_SWITCH, INPUT_PULLUP);
}

void loop() {
  int x = analogRead(STICK_X);
  jib.setSpeed(analogRead(STICK_Y) > 700 ? 12 : 8);
  if (x > 600) jib.step(4);
  if (x < 400 && digitalRead(HOME_SWITCH) == HIGH) jib.step(-4);
}
