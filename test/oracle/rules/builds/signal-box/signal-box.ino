// Signal box on the Pico: the lever sets the arm's two lamps.
enum Pins : uint8_t { LEVER = 15, DANGER = 2, CLEAR = 3 };

void setup() {
  pinMode(LEVER, INPUT_PULLUP);
  pinMode(DANGER, OUTPUT);
  pinMode(CLEAR, OUTPUT);
}

void loop() {
  const bool pulled = digitalRead(LEVER) == LOW;
  digitalWrite(DANGER, !pulled);
  digitalWrite(CLEAR, pulled);
  delay(5);
}
