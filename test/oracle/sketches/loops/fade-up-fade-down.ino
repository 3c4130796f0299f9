int lamp = 9;
void setup() { pinMode(lamp, OUTPUT); }
void loop() {
  for (int fade = 0; fade <= 255; fade += 15) {
    analogWrite(lamp, fade);
    delay(5);
  }
  for (int fade = 255; fade >= 0; fade -= 15) {
    analogWrite(lamp, fade);
    delay(5);
  }
}
