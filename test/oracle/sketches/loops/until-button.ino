const int start = 2, lamp = 5, motor = 6;
void setup() {
  pinMode(start, INPUT_PULLUP);
  pinMode(lamp, OUTPUT);
  pinMode(motor, OUTPUT);
}
void loop() {
  digitalWrite(lamp, HIGH);
  unsigned long t = millis();
  while (digitalRead(start) == HIGH) {
    if (millis() - t > 60) break;
  }
  digitalWrite(lamp, LOW);
  digitalWrite(motor, HIGH);
  delay(20);
  digitalWrite(motor, LOW);
}
