// Turnstile: each quarter turn is counted in an interrupt, the counter lamp blinks at every tenth guest.
const byte beamPin = 2;
const byte tenthLamp = 6;
volatile uint16_t guests = 0;
volatile unsigned long lastBeam = 0;

void countGuest() {
  unsigned long now = millis();
  if (now - lastBeam > 200) {
    guests++;
    lastBeam = now;
  }
}

uint16_t guestsNow() {
  noInterrupts();
  uint16_t copy = guests;
  interrupts();
  return copy;
}

void setup() {
  pinMode(beamPin, INPUT_PULLUP);
  pinMode(tenthLamp, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(beamPin), countGuest, FALLING);
}

void loop() {
  digitalWrite(tenthLamp, guestsNow() % 10 == 0);
}
