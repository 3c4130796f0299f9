void beep(int hertz = 440, unsigned long ms = 10, byte pin = 9) {
  tone(pin, hertz, ms);
  delay(ms + 2);
}
void blink(byte pin = LED_BUILTIN, byte times = 2) {
  while (times-- > 0) {
    digitalWrite(pin, HIGH);
    delay(4);
    digitalWrite(pin, LOW);
    delay(4);
  }
}
void setup() {
  pinMode(LED_BUILTIN, OUTPUT);
  pinMode(6, OUTPUT);
  pinMode(9, OUTPUT);
  pinMode(10, OUTPUT);
}
void loop() {
  beep();
  beep(880);
  beep(220, 5, 10);
  blink();
  blink(6);
  blink(6, 5);
}
