// One-wire link between two boards: low is driven, high is let go.
#define LINK 6
static inline void low()  { DDRD |= (1 << LINK); }
static inline void free_() { DDRD &= ~(1 << LINK); }
static inline bool level() { return PIND & (1 << LINK); }
bool sendByte(uint8_t v) {
  bool clash = false;
  for (uint8_t i = 0; i < 8; i++) {
    if (v & 1) free_(); else low();
    delayMicroseconds(50);
    if ((v & 1) && !level()) clash = true;
    v >>= 1;
  }
  free_();
  return clash;
}
void setup() {
  PORTD &= ~(1 << LINK);
  pinMode(LED_BUILTIN, OUTPUT);
}
void loop() {
  digitalWrite(LED_BUILTIN, sendByte(0xA5));
  delay(5);
}
