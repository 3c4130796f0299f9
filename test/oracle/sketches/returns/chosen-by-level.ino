byte worst(int a, int b, int c) {
  int most = max(a, max(b, c));
  return most == a ? 3 : most == b ? 5 : 6;
}
void setup() {
  pinMode(3, OUTPUT); pinMode(5, OUTPUT); pinMode(6, OUTPUT);
}
void loop() {
  byte pin = worst(analogRead(A0), analogRead(A1), analogRead(A2));
  digitalWrite(pin, HIGH);
  delay(9);
  digitalWrite(pin, LOW);
}
