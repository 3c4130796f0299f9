// What digitalWrite does, done by hand once and kept.
volatile uint8_t *lampPort;
uint8_t lampMask;
const byte lamp = 7;
void setup() {
  pinMode(lamp, OUTPUT);
  lampPort = portOutputRegister(digitalPinToPort(lamp));
  lampMask = digitalPinToBitMask(lamp);
}
void loop() {
  *lampPort |= lampMask;
  delay(6);
  *lampPort &= ~lampMask;
  delay(6);
}
