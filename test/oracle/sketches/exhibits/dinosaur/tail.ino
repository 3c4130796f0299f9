static int tailA, tailB;

void tailBegin(int a, int b) {
  tailA = a;
  tailB = b;
  pinMode(tailA, OUTPUT);
  pinMode(tailB, OUTPUT);
}

void tailSwing() {
  digitalWrite(tailA, HIGH);
  digitalWrite(tailB, LOW);
  delay(30);
  digitalWrite(tailA, LOW);
  digitalWrite(tailB, HIGH);
  delay(30);
  digitalWrite(tailB, LOW);
}
