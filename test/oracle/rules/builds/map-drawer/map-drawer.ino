// Map drawer of the archive: opened, it lights its map through a transistor and goes dark after a while.
const byte DRAWER = 3;
const byte LIGHT = 5;
const unsigned long STAYS_LIT = 120000UL;

unsigned long openedAt = 0;
bool wasOpen = false;

void setup() {
  pinMode(DRAWER, INPUT_PULLUP);
  pinMode(LIGHT, OUTPUT);
}

void loop() {
  const bool isOpen = digitalRead(DRAWER) == HIGH;   // the magnet holds the contact closed
  if (isOpen && !wasOpen) openedAt = millis();
  wasOpen = isOpen;
  digitalWrite(LIGHT, isOpen && millis() - openedAt < STAYS_LIT);
  delay(30);
}
