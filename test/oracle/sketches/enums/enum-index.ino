enum Lamp { RED, YELLOW, GREEN, LAMPS };
const byte pins[LAMPS] = {11, 10, 9};
Lamp now = RED;

void setup() {
  for (int l = RED; l < LAMPS; l++) pinMode(pins[l], OUTPUT);
}

void loop() {
  digitalWrite(pins[now], LOW);
  now = (Lamp)((now + 1) % LAMPS);
  digitalWrite(pins[now], HIGH);
  delay(45);
}
