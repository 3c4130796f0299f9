const int8_t group[3][4] = {
  {2, 3, -1, -1},
  {4, -1, -1, -1},
  {5, 6, 7, -1},
};

void groupTo(int g, int level) {
  for (int i = 0; group[g][i] >= 0; i++) digitalWrite(group[g][i], level);
}

void setup() {
  for (int g = 0; g < 3; g++)
    for (int i = 0; i < 4; i++)
      if (group[g][i] != -1) pinMode(group[g][i], OUTPUT);
}

void loop() {
  for (int g = 0; g < 3; g++) {
    groupTo(g, HIGH);
    delay(30);
    groupTo(g, LOW);
  }
}
