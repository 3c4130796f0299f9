// One-shot: everything happens in setup, loop is empty on purpose.
int steps[] = {4, 7, 8};
void setup() {
  for (int s : steps) pinMode(s, OUTPUT);
  for (int round = 0; round < 3; round++) {
    for (int s : steps) {
      digitalWrite(s, HIGH);
      delay(5);
      digitalWrite(s, LOW);
    }
  }
  pinMode(13, OUTPUT);
  digitalWrite(13, HIGH);
}
void loop() {}
