// Sound post: a player module on the third port of the chip.
#define PLAYER_BAUD 9600
#define START_KEY 27

void play(uint8_t track) {
  const uint8_t order[] = { 0x7E, 0xFF, 0x06, 0x03, 0x00, 0x00, track, 0xEF };
  Serial2.write(order, sizeof(order));
}

void setup() {
  Serial2.begin(PLAYER_BAUD);
  pinMode(START_KEY, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(START_KEY) == LOW) {
    play(1);
    delay(300);
  }
}
