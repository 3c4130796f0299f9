// The same code text twice, once for each panel: the pins are defined anew in between.
#define LAMP 4
#define BUTTON A0
void left() {
  digitalWrite(LAMP, digitalRead(BUTTON) == LOW);
}
#undef LAMP
#undef BUTTON
#define LAMP 5
#define BUTTON A1
void right() {
  digitalWrite(LAMP, digitalRead(BUTTON) == LOW);
}
#undef LAMP
#define LAMP 13

void setup() {
  pinMode(4, OUTPUT);
  pinMode(5, OUTPUT);
  pinMode(LAMP, OUTPUT);
  pinMode(A0, INPUT_PULLUP);
  pinMode(BUTTON, INPUT_PULLUP);
}

void loop() {
  left();
  right();
  digitalWrite(LAMP, HIGH);
  delay(10);
  digitalWrite(LAMP, LOW);
  delay(10);
}
