int bell = 8;
int plate = 2;
int pause = 80;

void setup() {
  pinMode(bell, OUTPUT);
  pinMode(plate, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(plate) == LOW) {
    digitalWrite(bell, HIGH);
    delay(pause);
    digitalWrite(bell, LOW);
    delay(pause * 3);
    pause = pause + 1;
    if (pause > 100) pause = 80;
  }
}
