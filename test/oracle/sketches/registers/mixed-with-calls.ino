const byte strobe = 10, data = 11, clock = 12;
void sendFast(byte v) {
  PORTB &= ~(1 << 2);
  for (byte m = 0x80; m; m >>= 1) {
    if (v & m) PORTB |= 1 << 3; else PORTB &= ~(1 << 3);
    PORTB |= 1 << 4;
    PORTB &= ~(1 << 4);
  }
  digitalWrite(strobe, HIGH);
}
void setup() {
  pinMode(strobe, OUTPUT);
  pinMode(data, OUTPUT);
  pinMode(clock, OUTPUT);
}
void loop() {
  static byte v;
  sendFast(v++);
  delay(4);
}
