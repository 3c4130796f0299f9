/*
  Test board of the exhibit workshop: every output once, with the
  pins written the way each of us likes to write them.
*/
void setup() {
  pinMode(2, OUTPUT);
  pinMode(0x3, OUTPUT);
  pinMode(0b100, OUTPUT);
  pinMode(B101, OUTPUT);
  pinMode(06, OUTPUT);
  pinMode(7U, OUTPUT);
  pinMode(8L, OUTPUT);
  pinMode('\t', OUTPUT);      // 9
  pinMode((uint8_t)10UL, OUTPUT);
  pinMode(0XB, OUTPUT);
  pinMode(B00001100, OUTPUT);
}

void loop() {
  digitalWrite(2, 1);
  digitalWrite(0x3, 0x1);
  digitalWrite(0b100, true);
  digitalWrite(B101, HIGH);
  digitalWrite(06, 'A');
  digitalWrite(7u, 1ul);
  digitalWrite(8l, !0);
  digitalWrite('\t', 0b1);
  digitalWrite(10UL, B1);
  digitalWrite(0XB, 2);
  digitalWrite(014, HIGH);
  delay(250);
  for (byte p = 2; p <= 12; p++) digitalWrite(p, LOW);
  delay(250);
}
