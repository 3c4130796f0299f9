void setup() {
  pinMode(9, OUTPUT);
  pinMode(4, INPUT_PULLUP);
}
void loop() {
again:
  digitalWrite(9, HIGH);
  delay(2);
  digitalWrite(9, LOW);
  if (digitalRead(4) == LOW) goto done;
  delay(2);
  goto again;
done:
  delay(10);
}
