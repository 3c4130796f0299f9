const byte red = 5, blue = 6;
const unsigned long redEvery = 37, blueEvery = 53;
unsigned long redAt, blueAt;
bool redOn, blueOn;

void setup() {
  pinMode(red, OUTPUT);
  pinMode(blue, OUTPUT);
}

void loop() {
  unsigned long now = millis();
  if (now - redAt >= redEvery) {
    redAt = now;
    redOn = !redOn;
    digitalWrite(red, redOn ? HIGH : LOW);
  }
  if (now - blueAt >= blueEvery) {
    blueAt += blueEvery;
    blueOn = !blueOn;
    digitalWrite(blue, blueOn);
  }
}
