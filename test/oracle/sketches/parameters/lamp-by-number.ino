// Lamp 1 to 6 stand on pins 4 to 9.
void lampOn(int number) {
  digitalWrite(number + 3, HIGH);
}
void lampOff(int number) {
  digitalWrite(number + 3, LOW);
}
void flash(int number, int ms) {
  lampOn(number);
  delay(ms);
  lampOff(number);
}
void setup() {
  for (int n = 1; n <= 6; n++) pinMode(n + 3, OUTPUT);
}
void loop() {
  flash(1, 20);
  flash(3, 20);
  flash(6, 40);
  lampOn(2);
  delay(10);
  lampOff(2);
}
