// Guest counter: a key counts up, a lamp shows even and odd.
const byte countKey = 2;
const byte evenLamp = 8;
const unsigned long settle = 30;

unsigned int guests = 0;
bool wasDown = false;
unsigned long changedAt = 0;

void setup() {
  pinMode(countKey, INPUT_PULLUP);
  pinMode(evenLamp, OUTPUT);
}

void loop() {
  bool isDown = digitalRead(countKey) == LOW;
  if (isDown != wasDown && millis() - changedAt > settle) {
    changedAt = millis();
    wasDown = isDown;
    if (isDown) guests++;
  }
  digitalWrite(evenLamp, guests % 2 == 0 ? HIGH : LOW);
}
