#include <EEPROM.h>
#include <Wire.h>

static const uint8_t kButtonPin = 2;
static const uint8_t kTipPin = 3;
static const uint8_t kVibePin = 5;
static const uint8_t kPowerHoldPin = 4;

struct Spell {
  const char *name;
  void (*cast)(uint8_t strength);
};

void lumos(uint8_t strength) { analogWrite(kTipPin, strength); }
void nox(uint8_t) { digitalWrite(kTipPin, LOW); }
void tremor(uint8_t strength) {
  for (uint8_t i = 0; i < 4; i++) {
    analogWrite(kVibePin, strength);
    delay(30);
    analogWrite(kVibePin, 0);
    delay(30);
  }
}

const Spell kSpells[] = {
    {"lumos", lumos},
    {"tremor", tremor},
    {"nox", nox},
};
const uint8_t kSpellCount = sizeof(kSpells) / sizeof(kSpells[0]);

uint8_t next_spell = 0;

void setup() {
  pinMode(kPowerHoldPin, OUTPUT);
  digitalWrite(kPowerHoldPin, HIGH);
  pinMode(kButtonPin, INPUT_PULLUP);
  pinMode(kTipPin, OUTPUT);
  pinMode(kVibePin, OUTPUT);
  next_spell = EEPROM.read(0) % kSpellCount;
}

void loop() {
  static bool was_down = false;
  bool down = digitalRead(kButtonPin) == LOW;
  if (down && !was_down) {
    kSpells[next_spell].cast(200);
    next_spell = (next_spell + 1) % kSpellCount;
    EEPROM.update(0, next_spell);
  }
  was_down = down;
  if (millis() > 60000UL) digitalWrite(kPowerHoldPin, LOW);
}
