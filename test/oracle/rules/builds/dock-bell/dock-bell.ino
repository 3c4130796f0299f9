// Dock bell: the button rings while it is held, a lamp follows.
const int bellButton = D5;
const int bellLamp = D6;
const int bell = D7;

void setup() {
  pinMode(bellButton, INPUT_PULLUP);
  pinMode(bellLamp, OUTPUT);
}

void loop() {
  const bool held = digitalRead(bellButton) == LOW;
  digitalWrite(bellLamp, held ? HIGH : LOW);
  if (held) tone(bell, 660);
  else noTone(bell);
  delay(20);
}
