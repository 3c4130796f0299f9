// Porthole: two lamps swap with a touch of the key.
class Porthole {
 public:
  Porthole(uint8_t left, uint8_t right) : pins{left, right} {}
  void begin() {
    for (uint8_t pin : pins) pinMode(pin, OUTPUT);
  }
  void show(bool second) {
    digitalWrite(pins[0], second ? LOW : HIGH);
    digitalWrite(pins[1], second ? HIGH : LOW);
  }

 private:
  uint8_t pins[2];
};

Porthole porthole(4, 5);
const uint8_t key = 7;

void setup() {
  porthole.begin();
  pinMode(key, INPUT_PULLUP);
}

void loop() {
  porthole.show(digitalRead(key) == LOW);
  delay(20);
}
