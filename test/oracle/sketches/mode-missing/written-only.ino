// The mode of 6 is set nowhere: on the chip this switches the pull-up.
void setup() { pinMode(5, OUTPUT); }
void loop() {
  digitalWrite(5, HIGH);
  digitalWrite(6, HIGH);
  delay(5);
  digitalWrite(5, LOW);
  digitalWrite(6, LOW);
  delay(5);
}
