void countdown(byte n) {
  if (n == 0) {
    digitalWrite(12, HIGH);
    delay(10);
    digitalWrite(12, LOW);
    return;
  }
  digitalWrite(3 + n, HIGH);
  delay(10);
  digitalWrite(3 + n, LOW);
  countdown(n - 1);
}
void setup() {
  for (byte p = 4; p <= 8; p++) pinMode(p, OUTPUT);
  pinMode(12, OUTPUT);
}
void loop() { countdown(5); }
