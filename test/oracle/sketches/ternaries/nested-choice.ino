int levelPin(int level) { return level > 800 ? 11 : level > 400 ? 10 : 9; }
void setup() {
  pinMode(9, OUTPUT); pinMode(10, OUTPUT); pinMode(11, OUTPUT);
}
void loop() {
  int level = analogRead(A1);
  int pin = levelPin(level);
  analogWrite(pin, level ? 200 : 20);
  delay(5);
  analogWrite(pin, 0);
}
