void findPins(int panel, int *lamp, int *key) {
  *lamp = 22 + panel * 2;
  *key = 23 + panel * 2;
}
void setup() {
  for (int panel = 0; panel < 4; panel++) {
    int lamp, key;
    findPins(panel, &lamp, &key);
    pinMode(lamp, OUTPUT);
    pinMode(key, INPUT_PULLUP);
  }
}
void loop() {
  int lamp, key;
  findPins(0, &lamp, &key);
  digitalWrite(lamp, digitalRead(key));
  findPins(3, &lamp, &key);
  digitalWrite(lamp, digitalRead(key));
  delay(5);
}
