struct Pair { int lamp, key; };
Pair pairOf(int i) { Pair p; p.lamp = 5 + i; p.key = A0 + i; return p; }
Pair special() { return {11, A5}; }

void setup() {
  for (int i = 0; i < 3; i++) {
    Pair p = pairOf(i);
    pinMode(p.lamp, OUTPUT);
    pinMode(p.key, INPUT_PULLUP);
  }
  pinMode(special().lamp, OUTPUT);
  pinMode(special().key, INPUT_PULLUP);
}
void loop() {
  for (int i = 0; i < 3; i++) {
    const Pair p = pairOf(i);
    digitalWrite(p.lamp, !digitalRead(p.key));
  }
  auto s = special();
  digitalWrite(s.lamp, !digitalRead(s.key));
  delay(6);
}
