// Pressure gauge: the bellows turn a track, three lamps tell low, right and high.
const int bellows = A1;
const int gauge[3] = { 4, 5, 6 };

void showOnly(int which) {
  for (int i = 0; i < 3; i++) digitalWrite(gauge[i], i == which);
}

void setup() {
  for (int pin : gauge) pinMode(pin, OUTPUT);
}

void loop() {
  int reading = analogRead(bellows);
  showOnly(reading < 300 ? 0 : reading < 700 ? 1 : 2);
  delay(50);
}
