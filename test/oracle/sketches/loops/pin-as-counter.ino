void setup() {
  for (int pin = 2; pin <= 9; pin++) {
    pinMode(pin, OUTPUT);
  }
}
void loop() {
  for (int pin = 2; pin < 10; ++pin) {
    digitalWrite(pin, HIGH);
    delay(25);
  }
  for (int pin = 9; pin > 1; pin--) {
    digitalWrite(pin, LOW);
    delay(25);
  }
}
