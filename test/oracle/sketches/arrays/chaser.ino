int lamps[] = {3, 5, 6, 9, 10, 11};
const int count = sizeof(lamps) / sizeof(lamps[0]);
int at = 0;
int step = 1;

void setup() {
  for (int i = 0; i < count; i++) {
    pinMode(lamps[i], OUTPUT);
    digitalWrite(lamps[i], LOW);
  }
}

void loop() {
  digitalWrite(lamps[at], LOW);
  at += step;
  if (at >= count - 1 || at <= 0) {
    step = -step;
  }
  digitalWrite(lamps[at], HIGH);
  delay(80);
}
