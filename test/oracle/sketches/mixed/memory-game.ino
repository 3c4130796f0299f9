// Repeat the row of lamps. Four lamps, four keys, one buzzer.
enum { PLAYERS = 1, LAMPS = 4, LONGEST = 12 };
const byte LAMP[] = {5, 6, 9, 10};
const byte KEY[]  = {2, 3, 4, 7};
const byte BUZZER = 11;
const int NOTE[] = {262, 330, 392, 523};

byte row[LONGEST];
byte length = 0;

void flash(byte n, int ms) {
  digitalWrite(LAMP[n], HIGH);
  tone(BUZZER, NOTE[n]);
  delay(ms);
  noTone(BUZZER);
  digitalWrite(LAMP[n], LOW);
  delay(ms / 2);
}

int waitForKey(unsigned long limit) {
  unsigned long t = millis();
  while (millis() - t < limit) {
    for (byte k = 0; k < LAMPS; k++) {
      if (digitalRead(KEY[k]) == LOW) return k;
    }
  }
  return -1;
}

void lost() {
  for (byte times = 0; times < 3; times++) {
    for (byte n = 0; n < LAMPS; n++) digitalWrite(LAMP[n], HIGH);
    tone(BUZZER, 110, 5);
    delay(8);
    for (byte n = 0; n < LAMPS; n++) digitalWrite(LAMP[n], LOW);
    delay(8);
  }
  length = 0;
}

void setup() {
  for (byte n = 0; n < LAMPS; n++) {
    pinMode(LAMP[n], OUTPUT);
    pinMode(KEY[n], INPUT_PULLUP);
  }
  pinMode(BUZZER, OUTPUT);
  randomSeed(analogRead(A5));
}

void loop() {
  if (length == LONGEST) length = 0;
  row[length++] = random(LAMPS);
  for (byte i = 0; i < length; i++) flash(row[i], 20);
  for (byte i = 0; i < length; i++) {
    int key = waitForKey(30);
    if (key < 0 || key != row[i]) {
      lost();
      return;
    }
    flash(key, 10);
  }
}
