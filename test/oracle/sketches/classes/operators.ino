class Out {
  uint8_t pin;
public:
  explicit Out(uint8_t p) : pin(p) {}
  void begin() { pinMode(pin, OUTPUT); }
  Out &operator=(bool level) { digitalWrite(pin, level); return *this; }
  Out &operator=(const Out &) = delete;
};
class In {
  uint8_t pin;
public:
  explicit In(uint8_t p) : pin(p) {}
  void begin() { pinMode(pin, INPUT_PULLUP); }
  operator bool() const { return digitalRead(pin) == LOW; }
};
Out lamp(5), horn(6);
In key(2), lid(3);
void setup() { lamp.begin(); horn.begin(); key.begin(); lid.begin(); }
void loop() {
  lamp = true;
  horn = key;
  if (lid && !key) lamp = false;
  while (key) { horn = HIGH; if (millis() % 50 == 0) break; }
  delay(5);
}
