// Six lamps on three wires: each pair of pins has two lamps, one each way.
const uint8_t direction[6] = {B011, B011, B110, B110, B101, B101};
const uint8_t level[6]     = {B001, B010, B010, B100, B001, B100};
void show(uint8_t lamp) {
  DDRC = (DDRC & ~B111) | direction[lamp];
  PORTC = (PORTC & ~B111) | level[lamp];
}
void setup() {}
void loop() {
  for (uint8_t lamp = 0; lamp < 6; lamp++) {
    show(lamp);
    delay(4);
  }
}
