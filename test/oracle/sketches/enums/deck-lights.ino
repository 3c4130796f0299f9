enum { BOW = 3, MID, AFT, MAST = 10, FLAG };
enum Level { DARK, BRIGHT };

void light(int which, Level level) { digitalWrite(which, level == BRIGHT ? HIGH : LOW); }

void setup() {
  pinMode(BOW, OUTPUT);
  pinMode(MID, OUTPUT);
  pinMode(AFT, OUTPUT);
  pinMode(MAST, OUTPUT);
  pinMode(FLAG, OUTPUT);
}

void loop() {
  light(BOW, BRIGHT); light(MID, DARK); light(AFT, BRIGHT);
  delay(30);
  light(BOW, DARK); light(MID, BRIGHT); light(AFT, DARK);
  light(MAST, analogRead(A0) > 500 ? BRIGHT : DARK);
  light(FLAG, BRIGHT);
  delay(30);
}
