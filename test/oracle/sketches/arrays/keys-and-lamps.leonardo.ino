const uint8_t keys[]  = {2, 3, 4, 5};
const uint8_t lamps[] = {8, 9, 10, 11};
static_assert(sizeof(keys) == sizeof(lamps), "one lamp for each key");

void setup() {
  for (uint8_t key : keys) pinMode(key, INPUT_PULLUP);
  for (auto lamp : lamps) pinMode(lamp, OUTPUT);
}

void loop() {
  for (size_t i = 0; i < sizeof(keys); i++)
    digitalWrite(lamps[i], !digitalRead(keys[i]));
}
