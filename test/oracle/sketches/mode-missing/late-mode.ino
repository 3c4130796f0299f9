int relay = 7;
void setup() {
  digitalWrite(relay, HIGH);   // first the level, then the direction: no click at the start
  pinMode(relay, OUTPUT);
}
void loop() {
  if (analogRead(A0) > 700) {
    digitalWrite(relay, LOW);
    delay(5);
    digitalWrite(relay, HIGH);
  }
}
