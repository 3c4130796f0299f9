void setup() {
  for (int p = 2; p < 12; p++) pinMode(p, OUTPUT);
}
void loop() {
  int p = 2 + analogRead(A0) * 10L / 1024;
  digitalWrite(p, HIGH);
  delay(5);
  digitalWrite(p, LOW);
}
