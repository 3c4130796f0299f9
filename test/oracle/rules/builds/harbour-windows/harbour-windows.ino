// Eight windows of the customs house behind a shift register.
constexpr uint8_t DATA = 11, CLOCK = 13, LATCH = 10;

uint8_t pattern = 0b00000001;

void putOut(uint8_t bits) {
  digitalWrite(LATCH, LOW);
  shiftOut(DATA, CLOCK, MSBFIRST, bits);
  digitalWrite(LATCH, HIGH);
}

void setup() {
  pinMode(DATA, OUTPUT);
  pinMode(CLOCK, OUTPUT);
  pinMode(LATCH, OUTPUT);
}

void loop() {
  putOut(pattern);
  pattern = (pattern << 1) | (pattern >> 7);
  delay(300);
}
