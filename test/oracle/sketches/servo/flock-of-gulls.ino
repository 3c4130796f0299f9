#include <Servo.h>
#define GULLS 3
Servo gulls[GULLS];
const byte wires[GULLS] = {3, 5, 6};
void setup() {
  for (byte g = 0; g < GULLS; g++) gulls[g].attach(wires[g], 600, 2300);
}
void loop() {
  for (int a = 20; a < 160; a += 20) {
    for (byte g = 0; g < GULLS; g++) gulls[g].write(g & 1 ? a : 180 - a);
    delay(20);
  }
}
