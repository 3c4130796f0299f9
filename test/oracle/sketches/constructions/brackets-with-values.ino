// All of these read like prototypes to somebody who does not know the names
const uint8_t pins[] = {3, 5, 6, 9};
#define LAMP(n) pins[n]
constexpr uint8_t next(uint8_t pin) { return pin + 1; }
class Lamp {
  uint8_t pin;
  uint8_t more[2];
public:
  Lamp(uint8_t p) : pin(p), more{p, p} {}
  Lamp(const uint8_t *list, uint8_t count) : pin(list[0]), more{list[count - 1], list[count - 2]} {}
  void begin() {
    pinMode(pin, OUTPUT);
    for (uint8_t one : more) pinMode(one, OUTPUT);
  }
};
Lamp whole(pins, sizeof(pins));
Lamp second(pins[1]);
Lamp byMacro(LAMP(2));
Lamp after(next(pins[3]));
Lamp part(pins + 1, sizeof(pins) / sizeof(pins[0]) - 1);
void setup() {
  whole.begin();
  second.begin();
  byMacro.begin();
  after.begin();
  part.begin();
  Lamp inside(pins[0]);
  inside.begin();
}
void loop() {}
