// Test bench of the workshop: a switch chooses, two lamps answer.
#define PASS_LAMP D5
#define FAIL_LAMP D6
#define GO_SWITCH D2

void setup() {
  pinMode(PASS_LAMP, OUTPUT);
  pinMode(FAIL_LAMP, OUTPUT);
  pinMode(GO_SWITCH, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(GO_SWITCH) == LOW) {
    digitalWrite(PASS_LAMP, HIGH);
    digitalWrite(FAIL_LAMP, LOW);
  } else {
    digitalWrite(PASS_LAMP, LOW);
    digitalWrite(FAIL_LAMP, HIGH);
  }
}
