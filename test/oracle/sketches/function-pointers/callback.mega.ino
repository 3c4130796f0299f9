void each(int first, int last, void (*what)(int)) {
  for (int p = first; p <= last; p++) what(p);
}
void makeOutput(int p) { pinMode(p, OUTPUT); }
void high(int p) { digitalWrite(p, HIGH); }
void low(int p) { digitalWrite(p, LOW); }

void setup() {
  each(40, 45, makeOutput);
  each(48, 49, &makeOutput);
}
void loop() {
  each(40, 45, high);
  each(48, 49, low);
  delay(10);
  each(40, 45, low);
  each(48, 49, high);
  delay(10);
}
