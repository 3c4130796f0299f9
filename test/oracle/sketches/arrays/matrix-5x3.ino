#define ROWS 3
#define COLS 5
int rows[ROWS] = {2, 3, 4};
int cols[COLS] = {5, 6, 7, 8, 9};
byte picture[ROWS][COLS] = {
  {1, 0, 0, 0, 1},
  {0, 1, 0, 1, 0},
  {0, 0, 1, 0, 0},
};

void setup() {
  for (int r = 0; r < ROWS; r++) {
    pinMode(rows[r], OUTPUT);
    digitalWrite(rows[r], HIGH);
  }
  for (int c = 0; c < COLS; c++) pinMode(cols[c], OUTPUT);
}

void loop() {
  for (int r = 0; r < ROWS; r++) {
    for (int c = 0; c < COLS; c++) digitalWrite(cols[c], picture[r][c] ? HIGH : LOW);
    digitalWrite(rows[r], LOW);
    delay(2);
    digitalWrite(rows[r], HIGH);
  }
}
