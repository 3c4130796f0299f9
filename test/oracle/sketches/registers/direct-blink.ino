// PB5 is the lamp on the board
void setup() {
  DDRB = DDRB | B00100000;
}
void loop() {
  PORTB = PORTB | 0x20;
  delay(20);
  PORTB = PORTB & ~0x20;
  delay(20);
}
