const byte red[] = {3, 5, 6};
void setup() {
  for (byte i = 0, pin = 8; i < 3; i++, pin++) {
    pinMode(red[i], OUTPUT);
    pinMode(pin, OUTPUT);
  }
}
void loop() {
  for (int i = 0, j = 10; i < 3; ++i, --j) {
    digitalWrite(red[i], HIGH);
    digitalWrite(j, HIGH);
    delay(20);
    digitalWrite(red[i], LOW);
    digitalWrite(j, LOW);
  }
}
