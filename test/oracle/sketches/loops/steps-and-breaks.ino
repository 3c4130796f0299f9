void setup() {
  for (int i = 3; i <= 11; i += 2) pinMode(i, OUTPUT);
  for (int i = 0; ; i++) {
    if (i == 3) break;
    pinMode(A0 + i, INPUT_PULLUP);
  }
}
void loop() {
  for (int i = 3; i <= 11; i += 2) {
    if (i == 7) continue;
    digitalWrite(i, HIGH);
  }
  delay(30);
  for (int i = 11; i >= 3; i -= 2) digitalWrite(i, LOW);
  for (int i = 0; i < 3; i++) {
    if (digitalRead(A0 + i) == LOW) {
      digitalWrite(7, HIGH);
      break;
    }
  }
  delay(30);
}
