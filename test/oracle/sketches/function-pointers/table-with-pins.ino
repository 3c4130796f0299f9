struct Task { void (*run)(byte pin); byte pin; unsigned long every, last; };
void toggle(byte pin) { digitalWrite(pin, !digitalRead(pin)); }
void tick(byte pin) { digitalWrite(pin, HIGH); delayMicroseconds(100); digitalWrite(pin, LOW); }

Task tasks[] = {
  { toggle, 7, 30, 0 },
  { tick, 8, 20, 0 },
  { toggle, A3, 50, 0 },
};

void setup() {
  for (Task &t : tasks) pinMode(t.pin, OUTPUT);
}
void loop() {
  for (Task &t : tasks) {
    if (millis() - t.last >= t.every) {
      t.last = millis();
      t.run(t.pin);
    }
  }
}
