int pins[6];
bool lit[6];

void setup() {
  for (int i = 0; i < 6; i++) {
    pins[i] = 4 + i * 1;
    pinMode(pins[i], OUTPUT);
  }
  randomSeed(analogRead(A0));
}

void loop() {
  int which = random(6);
  lit[which] = !lit[which];
  digitalWrite(pins[which], lit[which]);
  delay(15);
}
