// Knock pattern opens the chest (solenoid), sparkle inside
template <uint8_t Pin, bool ActiveLow = false>
struct Output {
  static void begin() {
    pinMode(Pin, OUTPUT);
    off();
  }
  static void on() { digitalWrite(Pin, ActiveLow ? LOW : HIGH); }
  static void off() { digitalWrite(Pin, ActiveLow ? HIGH : LOW); }
  static void toggle() { digitalWrite(Pin, !digitalRead(Pin)); }
};

template <uint8_t Pin>
class Debounced {
  unsigned long since_ = 0;
  bool last_ = false;
public:
  void begin() { pinMode(Pin, INPUT_PULLUP); }
  bool fell(unsigned long now) {
    bool down = digitalRead(Pin) == LOW;
    if (down == last_ || now - since_ < 20) return false;
    since_ = now;
    last_ = down;
    return down;
  }
};

using Solenoid = Output<5, true>;
using Sparkle = Output<13>;
typedef Output<6> Fan;

Debounced<2> lid;
Debounced<A3> reset_;
const int piezo = A0;

void setup() {
  Solenoid::begin();
  Sparkle::begin();
  Fan::begin();
  lid.begin();
  reset_.begin();
}

void loop() {
  auto now = millis();
  if (analogRead(piezo) > 300) {
    Solenoid::on();
    delay(20);
    Solenoid::off();
  }
  if (lid.fell(now)) Fan::on();
  if (reset_.fell(now)) Fan::off();
  Sparkle::toggle();
  delay(50);
}
