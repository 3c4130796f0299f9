// Four slots, two values: the rest is 0, which is the serial receiver's pin.
int lamps[4] = {7, 8};

void setup() {
  for (int i = 0; i < 4; i++) {
    pinMode(lamps[i], OUTPUT);
  }
}

void loop() {
  for (int i = 0; i < 4; i++) {
    digitalWrite(lamps[i], HIGH);
    delay(10);
    digitalWrite(lamps[i], LOW);
  }
}
