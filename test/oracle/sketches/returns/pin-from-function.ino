int lampFor(int hour) {
  if (hour < 6) return 4;
  if (hour < 12) return 5;
  if (hour < 18) return 6;
  return 7;
}
int first() { return 4; }
int last() { return first() + 3; }

int hour = 0;

void setup() {
  for (int p = first(); p <= last(); p++) pinMode(p, OUTPUT);
}
void loop() {
  digitalWrite(lampFor(hour), HIGH);
  delay(10);
  digitalWrite(lampFor(hour), LOW);
  hour = (hour + 1) % 24;
}
