// Cannon deck: three bolts fire one after the other through a driver array.
#define GUNS 3
static const uint8_t guns[GUNS] = { A0, A1, A2 };
const uint8_t fuse = 10;

static void fire(uint8_t gun) {
  digitalWrite(gun, HIGH);
  delay(60);
  digitalWrite(gun, LOW);
}

void setup() {
  for (uint8_t i = 0; i < GUNS; i++) pinMode(guns[i], OUTPUT);
  pinMode(fuse, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(fuse) == LOW) {
    for (uint8_t i = 0; i < GUNS; i++) {
      fire(guns[i]);
      delay(150);
    }
  }
}
