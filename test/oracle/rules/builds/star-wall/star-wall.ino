// Star wall: sixteen lamps, four of them lit at a time.
const int FIRST = 22;
const int COUNT = 8;
int stars[COUNT];

void setup() {
  for (int i = 0; i < COUNT; ++i) {
    stars[i] = FIRST + 2 * i;
    pinMode(stars[i], OUTPUT);
  }
}

void loop() {
  for (int i = 0; i < COUNT; ++i) {
    digitalWrite(stars[i], HIGH);
    delay(80);
    digitalWrite(stars[i], LOW);
  }
}
