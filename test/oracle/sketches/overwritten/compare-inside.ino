// Another slip: the comparison went inside the brackets.
const int key = 2, lamp = 8;
void setup() {
  pinMode(key, INPUT_PULLUP);
  pinMode(lamp, OUTPUT);
}
void loop() {
  if (digitalRead(key == LOW)) digitalWrite(lamp, HIGH);
  if (digitalRead(key) == LOW) digitalWrite(lamp, LOW);
  delay(5);
}
