// Eight lamps on port A (pins 22 to 29), eight keys on port C (pins 30 to 37).
void setup() {
  DDRA = 0xFF;
  PORTA = 0x00;
  DDRC = 0x00;
  PORTC = 0xFF;
}
void loop() {
  PORTA = ~PINC;
  delay(5);
}
