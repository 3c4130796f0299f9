// Moon over the aquarium: the knob dims it.
static constexpr int kMoonPin = 16;
static constexpr int kKnobPin = 26;

void setup() {
  pinMode(kMoonPin, OUTPUT);
}

void loop() {
  analogWrite(kMoonPin, analogRead(kKnobPin) >> 2);
  delay(10);
}
