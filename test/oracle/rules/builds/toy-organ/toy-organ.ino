// Toy organ: four keys, one voice.
struct Key {
  uint8_t pin;
  uint16_t note;
};
const Key keys[] = { { 2, 262 }, { 3, 330 }, { 4, 392 }, { 5, 523 } };
const uint8_t voice = 9;

void setup() {
  for (auto &key : keys) pinMode(key.pin, INPUT_PULLUP);
}

void loop() {
  for (auto &key : keys) {
    if (digitalRead(key.pin) == LOW) {
      tone(voice, key.note);
      return;
    }
  }
  noTone(voice);
}
