const int melody[] = {110, 98, 87, 82, 0};

void roarBegin() {
  pinMode(PIN_SMOKE, OUTPUT);
  pinMode(PIN_SPEAKER, OUTPUT);
}

void roar() {
  digitalWrite(PIN_SMOKE, HIGH);
  for (const int *note = melody; *note; ++note) {
    tone(PIN_SPEAKER, *note);
    delay(50);
  }
  noTone(PIN_SPEAKER);
  digitalWrite(PIN_SMOKE, LOW);
}
