// lamp n lights 2n and 2n+1, as on the family tree panel (pins 2..13)
void tree(int n, bool on) {
  if (n > 6) return;
  digitalWrite(n * 2, on);
  digitalWrite(n * 2 + 1, on);
  tree(n * 2, on);
  tree(n * 2 + 1, on);
}
void setup() {
  for (int p = 2; p <= 13; p++) pinMode(p, OUTPUT);
}
void loop() {
  tree(1, true);
  delay(20);
  tree(1, false);
  delay(20);
}
