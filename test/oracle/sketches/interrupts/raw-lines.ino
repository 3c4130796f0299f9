// Written for the old core: 0 is pin 2, 1 is pin 3.
volatile byte state = LOW;
void flip() { state = !state; digitalWrite(8, state); }
void stop() { digitalWrite(8, LOW); digitalWrite(12, HIGH); }
void setup() {
  pinMode(8, OUTPUT);
  pinMode(12, OUTPUT);
  digitalWrite(2, HIGH);
  digitalWrite(3, HIGH);
  attachInterrupt(0, flip, CHANGE);
  attachInterrupt(1, stop, FALLING);
}
void loop() {
  digitalWrite(12, LOW);
  delay(10);
}
