byte fans[] = {3, 5, 6};
void setup() {
  pinMode(fans[0], OUTPUT);
  pinMode(fans[1], OUTPUT);
  pinMode(fans[2], OUTPUT);
}
void loop() {
  int k = analogRead(A3) / 342;       // 0, 1 or 2
  analogWrite(fans[k], 120);
  delay(20);
  analogWrite(fans[k], 0);
}
