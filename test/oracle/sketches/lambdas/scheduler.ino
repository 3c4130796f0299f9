// Scheduler with lambdas and captured pins, std-like array of structs with function pointers
struct Task { unsigned long every, last; void (*run)(); };
const uint8_t A = 5, B = 6, C = 9;
uint8_t level = 0;
Task tasks[] = {
  {10, 0, [] { digitalWrite(A, !digitalRead(A)); }},
  {15, 0, [] { analogWrite(B, level += 16); }},
  {50, 0, [] { static bool on; on = !on; digitalWrite(C, on); }},
};
template <typename F> void forEach(F f) { for (auto &t : tasks) f(t); }
void setup() {
  for (uint8_t p = A; p <= C; p++) if (p == A || p == B || p == C) pinMode(p, OUTPUT);
  uint8_t ready = 12;
  auto signal = [ready](bool on) { digitalWrite(ready, on); };
  pinMode(ready, OUTPUT);
  signal(true);
}
void loop() {
  const unsigned long now = millis();
  forEach([now](Task &t) {
    if (now - t.last < t.every) return;
    t.last = now;
    t.run();
  });
}
