volatile byte changes;
ISR(PCINT0_vect) { changes++; digitalWrite(A0, changes & 1); }
void setup() {
  pinMode(8, INPUT_PULLUP);
  pinMode(9, INPUT_PULLUP);
  pinMode(A0, OUTPUT);
  PCICR |= bit(PCIE0);
  PCMSK0 |= bit(PCINT0) | bit(PCINT1);
}
void loop() {
  digitalWrite(13, changes > 20);
  pinMode(13, OUTPUT);
  delay(4);
}
