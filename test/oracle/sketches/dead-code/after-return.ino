#define SELF_TEST false
void setup() {
  pinMode(5, OUTPUT);
  if (SELF_TEST) {
    pinMode(6, OUTPUT);
    digitalWrite(6, HIGH);
  }
}
void loop() {
  digitalWrite(5, HIGH);
  delay(4);
  digitalWrite(5, LOW);
  delay(4);
  return;
  digitalWrite(9, HIGH);
}
