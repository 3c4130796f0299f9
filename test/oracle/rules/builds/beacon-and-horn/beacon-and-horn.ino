// Harbour mouth: the beacon flashes, the horn answers the button on the quay.
const int beaconPin = 7;
const int hornPin = 8;
const int quayButton = 2;

unsigned long lastFlash = 0;
bool lit = false;

void setup() {
  pinMode(beaconPin, OUTPUT);
  pinMode(hornPin, OUTPUT);
  pinMode(quayButton, INPUT_PULLUP);
}

void loop() {
  if (millis() - lastFlash >= 700) {
    lastFlash = millis();
    lit = !lit;
    digitalWrite(beaconPin, lit ? HIGH : LOW);
  }
  if (digitalRead(quayButton) == LOW) {
    tone(hornPin, 220, 400);
  }
}
