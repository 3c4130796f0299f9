// Shows level by two lamps, pulses by a third; plain variables, no arrays
byte probe = A0;
byte redLed = 4, greenLed = 5, pulseLed = 6;
byte beeper = 3;
unsigned int high_mv = 3000, low_mv = 800;
byte mode;

void lamp(byte which, byte on = 1) {
  digitalWrite(which, on);
}

void setup() {
  byte p = redLed;
  while (p <= pulseLed) {
    pinMode(p, OUTPUT);
    p++;
  }
  pinMode(beeper, OUTPUT);
  pinMode(2, INPUT_PULLUP);
  if (digitalRead(2) == LOW) { mode = 1; high_mv = 2000; }
}

void loop() {
  unsigned int mv = analogRead(probe) * 49 / 10;
  if (mv > high_mv) {
    lamp(redLed);
    lamp(greenLed, 0);
    if (mode) tone(beeper, 2000);
  } else if (mv < low_mv) {
    lamp(redLed, 0);
    lamp(greenLed);
    if (mode) tone(beeper, 500);
  } else {
    lamp(redLed, 0);
    lamp(greenLed, 0);
    noTone(beeper);
  }
  static unsigned int before;
  if (mv > before + 1000 || before > mv + 1000) {
    lamp(pulseLed);
    delay(20);
    lamp(pulseLed, 0);
  }
  before = mv;
}
