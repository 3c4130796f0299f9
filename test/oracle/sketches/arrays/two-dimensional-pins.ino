// red, yellow, green for each of three crossings
const int crossing[3][3] = {
  { 2,  3,  4 },
  { 5,  6,  7 },
  { 8,  9, 10 }
};
const int RED = 0, YELLOW = 1, GREEN = 2;

void setup() {
  for (int c = 0; c < 3; ++c)
    for (int l = 0; l < 3; ++l)
      pinMode(crossing[c][l], OUTPUT);
}

void only(int c, int lamp) {
  for (int l = 0; l < 3; ++l)
    digitalWrite(crossing[c][l], l == lamp);
}

void loop() {
  for (int c = 0; c < 3; ++c) {
    only(c, GREEN);
    delay(60);
    only(c, YELLOW);
    delay(20);
    only(c, RED);
  }
}
