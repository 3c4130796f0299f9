byte lamps[] = {5, 6, 9, 10};
void shuffle() {
  for (byte i = 3; i > 0; i--) {
    byte j = random(i + 1);
    byte t = lamps[i];
    lamps[i] = lamps[j];
    lamps[j] = t;
  }
}
void setup() {
  randomSeed(analogRead(A0));
  for (byte l : lamps) pinMode(l, OUTPUT);
}
void loop() {
  shuffle();
  for (byte i = 0; i < 4; i++) {
    digitalWrite(lamps[i], HIGH);
    delay(3);
    digitalWrite(lamps[i], LOW);
  }
}
