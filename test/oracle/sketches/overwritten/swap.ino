byte active = 5, waiting = 6;
void setup() { pinMode(active, OUTPUT); pinMode(waiting, OUTPUT); }
void loop() {
  digitalWrite(active, HIGH);
  digitalWrite(waiting, LOW);
  byte t = active;
  active = waiting;
  waiting = t;
  delay(8);
}
