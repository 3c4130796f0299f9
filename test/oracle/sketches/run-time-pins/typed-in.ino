void setup() {
  Serial.begin(9600);
  Serial.setTimeout(3);
}
void loop() {
  if (Serial.available()) {
    int pin = Serial.parseInt();
    if (pin >= 2 && pin <= 13) {
      pinMode(pin, OUTPUT);
      digitalWrite(pin, HIGH);
      delay(5);
      digitalWrite(pin, LOW);
    }
  }
}
