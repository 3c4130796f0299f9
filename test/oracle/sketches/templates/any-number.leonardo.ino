template <typename First> void lowAll(First pin) { digitalWrite(pin, LOW); }
template <typename First, typename... Rest> void lowAll(First pin, Rest... rest) {
  digitalWrite(pin, LOW);
  lowAll(rest...);
}
template <typename... Pins> void outputs(Pins... pins) {
  int done[] = {(pinMode(pins, OUTPUT), 0)...};
  (void)done;
}
template <uint8_t... Pins> struct Row {
  static void begin() {
    const uint8_t list[] = {Pins...};
    for (uint8_t pin : list) pinMode(pin, INPUT_PULLUP);
  }
  static uint8_t count() { return sizeof...(Pins); }
};
struct Lamp {
  uint8_t pin;
  void begin() { pinMode(pin, OUTPUT); }
};
template <typename... Parts> void beginAll(Parts &...parts) {
  int done[] = {(parts.begin(), 0)...};
  (void)done;
}
Lamp red{11}, green{12};
typedef Row<A0, A1, A2> Keys;
void setup() {
  outputs(5, 6, 9, 10);
  beginAll(red, green);
  Keys::begin();
}
void loop() {
  lowAll(5, 6, 9);
  for (uint8_t i = 0; i < Keys::count(); i++) digitalWrite(9 + i, digitalRead(A0 + i));
  delay(5);
}
