// all six analog pins as outputs for six lamps, A6 and A7 do not exist on this chip
void setup() {
  pinMode(A0, OUTPUT);
  pinMode(A1, OUTPUT);
  pinMode(A2, OUTPUT);
  pinMode(A3, OUTPUT);
  pinMode(A4, OUTPUT);
  pinMode(A5, OUTPUT);
  pinMode(LED_BUILTIN, OUTPUT);
}

void loop() {
  for (int p = A0; p <= A5; p++) {
    digitalWrite(p, HIGH);
    delay(20);
    digitalWrite(p, LOW);
  }
  digitalWrite(LED_BUILTIN, !digitalRead(LED_BUILTIN));
}
