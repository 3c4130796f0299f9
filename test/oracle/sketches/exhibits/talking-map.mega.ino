// X-macros hold the whole wiring of the map
#define TOWNS(X) \
  X(Harbour, 22, 40) \
  X(Mill, 23, 41) \
  X(Abbey, 24, 42) \
  X(Quarry, 25, 43)

#define AS_ENUM(name, key, lamp) name,
enum Town { TOWNS(AS_ENUM) TOWN_COUNT };
#undef AS_ENUM

#define AS_KEY(name, key, lamp) key,
const uint8_t keys[] = { TOWNS(AS_KEY) };
#define AS_LAMP(name, key, lamp) [name] = lamp,
const uint8_t lamps[TOWN_COUNT] = { TOWNS(AS_LAMP) };
#define AS_NAME(name, key, lamp) #name,
const char *const names[] = { TOWNS(AS_NAME) };

Town last = TOWN_COUNT;

void setup() {
  Serial.begin(9600);
  for (int town = Harbour; town < TOWN_COUNT; town++) {
    pinMode(keys[town], INPUT_PULLUP);
    pinMode(lamps[town], OUTPUT);
  }
}

void choose(Town town) {
  if (last != TOWN_COUNT) digitalWrite(lamps[last], LOW);
  digitalWrite(lamps[town], HIGH);
  Serial.println(names[town]);
  last = town;
}

void loop() {
  for (int town = 0; town < TOWN_COUNT; ++town) {
    if (digitalRead(keys[town]) == LOW) choose((Town)town);
  }
}
