int pin = 3;
void setup() {
  for (int i = 0; i < 10; i++) pinMode(3 + i, OUTPUT);
}
void loop() {
  digitalWrite(pin, HIGH);
  delay(5);
  digitalWrite(pin, LOW);
  pin = pin + 1;
  if (pin == 13) pin = 3;
}
