auto flash = [](int pin) {
  digitalWrite(pin, HIGH);
  delay(5);
  digitalWrite(pin, LOW);
};
void setup() {
  auto out = [](uint8_t p) { pinMode(p, OUTPUT); };
  out(4);
  out(9);
  out(10);
}
void loop() {
  flash(4);
  flash(9);
  int base = 9;
  auto second = [&]() { digitalWrite(base + 1, HIGH); };
  auto off = [base]() { digitalWrite(base + 1, LOW); };
  second();
  delay(5);
  off();
}
