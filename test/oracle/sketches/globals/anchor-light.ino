const int lanternPin = 6;
const int keyPin = 2;

int keyNow = 0;

void setup() {
  // the lantern on deck
  pinMode(lanternPin, OUTPUT);
  // the key has a resistor to ground on the strip board
  pinMode(keyPin, INPUT);
}

void loop() {
  keyNow = digitalRead(keyPin);

  if (keyNow == HIGH) {
    digitalWrite(lanternPin, HIGH);
  } else {
    digitalWrite(lanternPin, LOW);
  }
}
