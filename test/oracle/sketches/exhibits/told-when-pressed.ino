// callbacks registered in begin, null tested
typedef void (*Callback)(uint8_t which);
class Panel {
  static const uint8_t N = 3;
  uint8_t pins[N];
  bool last[N];
  Callback onPress = nullptr;
  Callback onRelease = NULL;
public:
  Panel(uint8_t a, uint8_t b, uint8_t c) { pins[0] = a; pins[1] = b; pins[2] = c; }
  void begin(Callback press) {
    onPress = press;
    for (uint8_t i = 0; i < N; i++) { pinMode(pins[i], INPUT_PULLUP); last[i] = HIGH; }
  }
  void whenReleased(Callback c) { onRelease = c; }
  void poll() {
    for (uint8_t i = 0; i < N; i++) {
      bool now = digitalRead(pins[i]);
      if (now != last[i]) {
        last[i] = now;
        if (now == LOW) { if (onPress) onPress(i); }
        else if (onRelease != nullptr) onRelease(i);
      }
    }
  }
};
Panel panel(2, 3, 4);
const int leds[] = {8, 9, 10};
void lit(uint8_t i) { digitalWrite(leds[i], HIGH); }
void dark(uint8_t i) { digitalWrite(leds[i], LOW); }
void setup() {
  for (int l : leds) pinMode(l, OUTPUT);
  panel.begin(lit);
  panel.whenReleased(dark);
}
void loop() { panel.poll(); delay(5); }
