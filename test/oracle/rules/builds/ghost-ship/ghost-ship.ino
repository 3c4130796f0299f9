// Ghost ship: a guest before the sensor starts the swell of three coloured lamps.
const byte presence = 7;
const byte glow[] = { 9, 10, 11 };

bool someone() { return digitalRead(presence) == HIGH; }

void swell() {
  for (int level = 0; level < 256; level += 5) {
    for (byte pin : glow) analogWrite(pin, level);
    delay(12);
  }
}

void setup() {
  pinMode(presence, INPUT);
  for (byte pin : glow) pinMode(pin, OUTPUT);
}

void loop() {
  if (someone()) swell();
  for (byte pin : glow) analogWrite(pin, 0);
}
