void setup() {
  pinMode(LED_BUILTIN, OUTPUT);
  pinMode(A0, OUTPUT);
  pinMode(MOSI, OUTPUT);
  pinMode(SCK, OUTPUT);
  pinMode(MISO, INPUT_PULLUP);
  pinMode(A11, INPUT_PULLUP);      // the same as pin 12
}
void loop() {
  digitalWrite(MOSI, digitalRead(MISO));
  digitalWrite(SCK, digitalRead(A11));
  digitalWrite(A0, analogRead(A6) > 100);    // A6 is on pin 4
  digitalWrite(LED_BUILTIN, HIGH);
  delay(10);
  digitalWrite(LED_BUILTIN, LOW);
  delay(10);
}
