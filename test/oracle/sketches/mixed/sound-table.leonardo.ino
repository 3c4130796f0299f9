#define PROGMEM_TABLE(name) const uint16_t name[] PROGMEM
PROGMEM_TABLE(tideSong) = {262, 294, 330, 262, 0};
PROGMEM_TABLE(galeSong) = {440, 415, 440, 415, 440, 0};
struct Song { const uint16_t *notes; uint8_t speaker; uint8_t lamp; };
const Song songs[] = {{tideSong, 5, 8}, {galeSong, 6, 9}};
const uint8_t keys[] = {2, 3};

void play(const Song &song) {
  digitalWrite(song.lamp, HIGH);
  for (const uint16_t *n = song.notes; pgm_read_word(n); n++) {
    tone(song.speaker, pgm_read_word(n), 4);
    delay(6);
  }
  noTone(song.speaker);
  digitalWrite(song.lamp, LOW);
}
void setup() {
  for (uint8_t i = 0; i < 2; i++) {
    pinMode(keys[i], INPUT_PULLUP);
    pinMode(songs[i].lamp, OUTPUT);
  }
}
void loop() {
  for (uint8_t i = 0; i < 2; i++)
    if (digitalRead(keys[i]) == LOW) play(songs[i]);
  delay(3);
}
