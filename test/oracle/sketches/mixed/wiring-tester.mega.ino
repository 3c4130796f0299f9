// Harness tester: drives one wire after the other and reads all others.
#define N 8
const byte near_[N] = {22, 23, 24, 25, 26, 27, 28, 29};
const byte far_[N]  = {37, 36, 35, 34, 33, 32, 31, 30};
const byte good = 12, bad = 11, go = A0;

bool check(byte wire) {
  pinMode(near_[wire], OUTPUT);
  digitalWrite(near_[wire], LOW);
  delay(1);
  bool right = digitalRead(far_[wire]) == LOW;
  for (byte other = 0; other < N; other++) {
    if (other != wire && digitalRead(far_[other]) == LOW) right = false;
  }
  pinMode(near_[wire], INPUT);
  return right;
}

void setup() {
  for (byte i = 0; i < N; i++) {
    pinMode(near_[i], INPUT);
    pinMode(far_[i], INPUT_PULLUP);
  }
  pinMode(good, OUTPUT);
  pinMode(bad, OUTPUT);
  pinMode(go, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(go) != LOW) return;
  bool all = true;
  for (byte wire = 0; wire < N; wire++) all &= check(wire);
  digitalWrite(all ? good : bad, HIGH);
  delay(20);
  digitalWrite(good, LOW);
  digitalWrite(bad, LOW);
}
