// Four-bit text display driven without a library.
const uint8_t RS = 12, EN = 11, D[4] = {5, 4, 3, 2};
void nibble(uint8_t v) {
  for (uint8_t i = 0; i < 4; i++) digitalWrite(D[i], (v >> i) & 0x01);
  digitalWrite(EN, HIGH);
  delayMicroseconds(2);
  digitalWrite(EN, LOW);
  delayMicroseconds(50);
}
void send(uint8_t v, bool data) {
  digitalWrite(RS, data ? HIGH : LOW);
  nibble(v >> 4);
  nibble(v);
}
void text(const char *s) { while (*s) send(*s++, true); }
void setup() {
  pinMode(RS, OUTPUT);
  pinMode(EN, OUTPUT);
  for (uint8_t i = 0; i < 4; i++) pinMode(D[i], OUTPUT);
  delay(50);
  nibble(3); nibble(3); nibble(3); nibble(2);
  send(0x28, false);
  send(0x0C, false);
}
void loop() {
  send(0x80, false);
  text("tide ");
  send('0' + (millis() / 100) % 10, true);
  delay(20);
}
