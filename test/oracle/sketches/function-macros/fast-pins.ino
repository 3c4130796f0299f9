#define bitOf(p)        ((p) < 8 ? (p) : (p) - 8)
#define fastHigh(p)     ((p) < 8 ? (PORTD |= 1 << bitOf(p)) : (PORTB |= 1 << bitOf(p)))
#define fastLow(p)      ((p) < 8 ? (PORTD &= ~(1 << bitOf(p))) : (PORTB &= ~(1 << bitOf(p))))
#define STROBE 12
#define DATA 7

void setup() {
  pinMode(STROBE, OUTPUT);
  pinMode(DATA, OUTPUT);
}

void loop() {
  for (byte i = 0; i < 8; i++) {
    if (0x5A & (1 << i)) fastHigh(DATA); else fastLow(DATA);
    fastHigh(STROBE);
    fastLow(STROBE);
  }
  delay(5);
}
