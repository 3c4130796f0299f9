// template class with begin(), crtp, static member pins, inline constexpr member function
template <typename Derived> struct Blinker {
  unsigned long next = 0;
  bool on = false;
  void tick() {
    if (millis() < next) return;
    next = millis() + static_cast<Derived *>(this)->period();
    on = !on;
    static_cast<Derived *>(this)->put(on);
  }
};
struct Lamp : Blinker<Lamp> {
  int pin;
  explicit Lamp(int p) : pin(p) { pinMode(p, OUTPUT); }
  unsigned period() const { return 20; }
  void put(bool level) { digitalWrite(pin, level); }
};
struct Pair : Blinker<Pair> {
  const int a, b;
  Pair(int first) : a(first), b(first + 1) { pinMode(a, OUTPUT); pinMode(b, OUTPUT); }
  unsigned period() const { return 30; }
  void put(bool level) { digitalWrite(a, level); digitalWrite(b, !level); }
};
Lamp mast(22);
Pair crossing(23);
void setup() {}
void loop() { mast.tick(); crossing.tick(); }
