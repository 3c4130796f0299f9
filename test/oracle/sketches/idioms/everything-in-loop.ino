// no setup worth the name
void setup() {}
void loop() {
  static bool begun = false;
  if (!begun) {
    pinMode(3, OUTPUT);
    pinMode(A5, INPUT_PULLUP);
    begun = true;
  }
  analogWrite(3, digitalRead(A5) ? 30 : 220);
}
