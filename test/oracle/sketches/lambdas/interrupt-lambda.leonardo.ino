volatile bool rung = false;
const byte bellWire = 3;
void setup() {
  pinMode(bellWire, INPUT_PULLUP);
  pinMode(13, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(bellWire), [] { rung = true; digitalWrite(9, HIGH); }, FALLING);
  pinMode(9, OUTPUT);
}
void loop() {
  if (rung) {
    rung = false;
    digitalWrite(13, HIGH);
    delay(5);
    digitalWrite(13, LOW);
    digitalWrite(9, LOW);
  }
}
