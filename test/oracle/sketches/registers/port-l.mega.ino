const uint8_t pattern[] = {0x81, 0x42, 0x24, 0x18};
void setup() {
  DDRL = 255;
  DDRK |= 0x0F;
}
void loop() {
  for (uint8_t i = 0; i < sizeof(pattern); i++) {
    PORTL = pattern[i];
    PORTK = (PORTK & 0xF0) | i;
    delay(8);
  }
}
