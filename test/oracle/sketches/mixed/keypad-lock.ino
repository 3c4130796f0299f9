#define ROWS 4
#define COLS 3
const char keys[ROWS][COLS] = {{'1','2','3'},{'4','5','6'},{'7','8','9'},{'*','0','#'}};
const byte rowPins[ROWS] = {2, 3, 4, 5};
const byte colPins[COLS] = {6, 7, 8};
const byte bolt = 10, beeper = 11, okLamp = 12;
const char secret[] = "1472";
char typed[5];
byte count = 0;

char scan() {
  for (byte c = 0; c < COLS; c++) {
    digitalWrite(colPins[c], LOW);
    for (byte r = 0; r < ROWS; r++) {
      if (digitalRead(rowPins[r]) == LOW) {
        digitalWrite(colPins[c], HIGH);
        return keys[r][c];
      }
    }
    digitalWrite(colPins[c], HIGH);
  }
  return 0;
}

void setup() {
  for (byte r = 0; r < ROWS; r++) pinMode(rowPins[r], INPUT_PULLUP);
  for (byte c = 0; c < COLS; c++) { pinMode(colPins[c], OUTPUT); digitalWrite(colPins[c], HIGH); }
  pinMode(bolt, OUTPUT);
  pinMode(beeper, OUTPUT);
  pinMode(okLamp, OUTPUT);
}

void loop() {
  char key = scan();
  if (!key) return;
  tone(beeper, key == '#' ? 400 : 1000, 3);
  if (key == '#') {
    typed[count] = 0;
    if (strcmp(typed, secret) == 0) {
      digitalWrite(bolt, HIGH);
      digitalWrite(okLamp, HIGH);
      delay(30);
      digitalWrite(bolt, LOW);
      digitalWrite(okLamp, LOW);
    }
    count = 0;
  } else if (count < 4) {
    typed[count++] = key;
  }
  delay(5);
}
