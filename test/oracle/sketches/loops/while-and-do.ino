byte p;
void setup() {
  p = 4;
  while (p < 8) {
    pinMode(p, OUTPUT);
    p++;
  }
  do {
    pinMode(p, OUTPUT);
    p += 2;
  } while (p <= 12);
}
void loop() {
  int n = 8;
  do digitalWrite(n, HIGH); while ((n += 2) <= 12);
  delay(20);
  n = 12;
  while (n >= 8) { digitalWrite(n, LOW); n -= 2; }
  int m = 7;
  while (m-- > 4) digitalWrite(m, m & 1);
  delay(20);
}
