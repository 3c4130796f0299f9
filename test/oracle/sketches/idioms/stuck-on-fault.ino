const byte fault = 2, lamp = 12, drive = 5;
void halt() {
  digitalWrite(drive, LOW);
  for (;;) {
    digitalWrite(lamp, HIGH);
    delay(5);
    digitalWrite(lamp, LOW);
    delay(5);
  }
}
void setup() {
  pinMode(fault, INPUT_PULLUP);
  pinMode(lamp, OUTPUT);
  pinMode(drive, OUTPUT);
}
void loop() {
  if (digitalRead(fault) == LOW) halt();
  digitalWrite(drive, HIGH);
  delay(5);
}
