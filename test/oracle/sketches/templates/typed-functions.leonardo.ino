template <typename T> T limit(T v, T low, T high) { return v < low ? low : v > high ? high : v; }
template <typename Pin, typename... Rest>
void outputs(Pin pin) { pinMode(pin, OUTPUT); }
template <typename Pin, typename... Rest>
void outputs(Pin pin, Rest... rest) { pinMode(pin, OUTPUT); outputs(rest...); }

void setup() { outputs(5, 6, 9); }
void loop() {
  int v = limit<int>(analogRead(A1), 100, 900);
  analogWrite(limit(4, 5, 9), v >> 2);
  analogWrite(6, 255 - (v >> 2));
  analogWrite(limit(20, 5, 9), 10);
  delay(5);
}
