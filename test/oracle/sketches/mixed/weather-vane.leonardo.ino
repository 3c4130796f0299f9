/// Weather vane for the harbour office: eight contacts, eight lamps around a rose.
namespace {

constexpr uint8_t contacts[] = {A0, A1, A2, A3, A4, A5, 2, 3};
constexpr uint8_t lamps[] = {4, 5, 6, 7, 8, 9, 10, 11};
constexpr uint8_t directions = sizeof(contacts) / sizeof(contacts[0]);
static_assert(sizeof(lamps) == directions, "");

class Rose {
 public:
  void begin() {
    for (auto pin : lamps) pinMode(pin, OUTPUT);
  }
  void point(int8_t direction) {
    if (direction == shown_) return;
    if (shown_ >= 0) digitalWrite(lamps[shown_], LOW);
    if (direction >= 0) digitalWrite(lamps[direction], HIGH);
    shown_ = direction;
  }

 private:
  int8_t shown_ = -1;
};

Rose rose;

int8_t readVane() {
  for (uint8_t d = 0; d < directions; ++d) {
    if (digitalRead(contacts[d]) == LOW) return d;
  }
  return -1;
}

}  // namespace

void setup() {
  for (auto pin : contacts) pinMode(pin, INPUT_PULLUP);
  rose.begin();
}

void loop() {
  rose.point(readVane());
  delay(2);
}
