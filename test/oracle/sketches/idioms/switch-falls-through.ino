int level() { return analogRead(A0) >> 8; }
void setup() {
  for (int i = 5; i < 9; i++) pinMode(i, OUTPUT);
}
void loop() {
  for (int i = 5; i < 9; i++) digitalWrite(i, LOW);
  switch (level()) {
    case 3: digitalWrite(8, HIGH);
    case 2: digitalWrite(7, HIGH);
    case 1: digitalWrite(6, HIGH); // fall through
    case 0: digitalWrite(5, HIGH); break;
    default: digitalWrite(4, HIGH);
  }
  delay(4);
}
