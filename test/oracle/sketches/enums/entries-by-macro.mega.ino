#define LAMPS(X) X(bow, 22) X(mast, 23) X(stern, 24)
#define HORNS(X) X(fog, 30) X(port, 31)
#define ENTRY(name, pin) name,
#define PINNED(name, pin) name##Pin = pin,
#define LAMP_PIN(name, pin) pin,
enum { LAMPS(ENTRY) lampCount };
enum Horn : uint8_t { firstHorn = 4, HORNS(PINNED) };
enum class Place { LAMPS(ENTRY) HORNS(ENTRY) count };
const uint8_t lamps[lampCount] = {LAMPS(LAMP_PIN)};
const uint8_t all[] = {LAMPS(LAMP_PIN) HORNS(LAMP_PIN)};
class Deck {
public:
  enum Part { LAMPS(ENTRY) parts };
  void light(Part part) { digitalWrite(lamps[part], HIGH); }
};
Deck deck;
void setup() {
  for (uint8_t i = 0; i < lampCount; i++) pinMode(lamps[i], OUTPUT);
  for (uint8_t i = 0; i < sizeof(all) - lampCount; i++) pinMode(all[lampCount + i], OUTPUT);
}
void loop() {
  deck.light(Deck::mast);
  digitalWrite(fogPin, HIGH);
  digitalWrite(portPin, LOW);
  digitalWrite(all[(int)Place::fog], LOW);
  digitalWrite(lamps[stern], HIGH);
  delay(5);
}
