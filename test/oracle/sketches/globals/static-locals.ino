void setup() {
  static const byte lamps = 7;
  const int alarm = lamps + 1;
  pinMode(lamps, OUTPUT);
  pinMode(alarm, OUTPUT);
}

void loop() {
  static const byte lamps = 7;
  static byte alarm = 8;
  static bool on;
  on = !on;
  digitalWrite(lamps, on);
  int level = analogRead(A5);
  if (level > 600) {
    const byte alarm = A4;   // another pin with the same name
    pinMode(alarm, OUTPUT);
    digitalWrite(alarm, HIGH);
  }
  digitalWrite(alarm, !on);
  delay(12);
}
