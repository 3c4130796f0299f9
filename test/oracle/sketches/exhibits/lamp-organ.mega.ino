// Port registers straight: eight lamps on port A, eight on port C, keys on port K
#define LAMPS_LOW PORTA
#define LAMPS_HIGH PORTC
#define KEYS PINK

#define sbi(port, bit) ((port) |= _BV(bit))
#define cbi(port, bit) ((port) &= ~_BV(bit))

volatile uint8_t pattern = 1;

void setup() {
  DDRA = 0xFF;
  DDRC = 0xFF;
  DDRK = 0x00;
  PORTK = 0xFF;
  sbi(DDRB, PB7);
  cbi(PORTB, PB7);
}

void loop() {
  uint8_t pressed = ~KEYS;
  if (pressed) {
    LAMPS_LOW = pressed;
    LAMPS_HIGH = ~pressed;
    sbi(PORTB, PB7);
  } else {
    LAMPS_LOW = pattern;
    LAMPS_HIGH = 0;
    pattern <<= 1;
    if (pattern == 0) pattern = 1;
    cbi(PORTB, PB7);
  }
  delay(30);
}
