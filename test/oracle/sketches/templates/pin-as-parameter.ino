template <uint8_t PIN>
struct Out {
  static void begin() { pinMode(PIN, OUTPUT); }
  static void set(bool v) { digitalWrite(PIN, v); }
};
template <int first, int last>
void allOut() { for (int p = first; p <= last; ++p) pinMode(p, OUTPUT); }

Out<5> lamp;
typedef Out<6> Horn;
using Bell = Out<A0>;

void setup() {
  lamp.begin();
  Horn::begin();
  Bell::begin();
  allOut<8, 10>();
}
void loop() {
  lamp.set(true); Horn::set(false); Bell::set(true);
  digitalWrite(8, HIGH); digitalWrite(9, LOW); digitalWrite(10, HIGH);
  delay(7);
  lamp.set(false); Horn::set(true); Bell::set(false);
  digitalWrite(8, LOW); digitalWrite(9, HIGH); digitalWrite(10, LOW);
  delay(7);
}
