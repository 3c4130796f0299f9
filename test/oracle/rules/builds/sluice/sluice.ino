// Sluice: two keys with outside pull-downs, the gate's lamp on a PNP switch at the upper rail.
#include <Bounce2.h>

Bounce up = Bounce();
Bounce down = Bounce();
const uint8_t upPin = 5, downPin = 6, lampPin = 11;

void setup() {
  up.attach(upPin, INPUT);
  down.attach(downPin, INPUT);
  up.interval(15);
  down.interval(15);
  digitalWrite(lampPin, HIGH);   // off first: the switch at the upper rail is on at LOW
  pinMode(lampPin, OUTPUT);
}

void loop() {
  up.update();
  down.update();
  if (up.rose()) digitalWrite(lampPin, LOW);
  if (down.rose()) digitalWrite(lampPin, HIGH);
}
