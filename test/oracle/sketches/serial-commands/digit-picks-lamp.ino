void setup() {
  Serial.begin(9600);
  for (byte p = 4; p < 9; p++) pinMode(p, OUTPUT);
}
void loop() {
  if (!Serial.available()) return;
  int c = Serial.read();
  if (c >= '1' && c <= '5') {
    byte lamp = 3 + (c - '0');
    digitalWrite(lamp, HIGH);
    delay(10);
    digitalWrite(lamp, LOW);
  }
}
