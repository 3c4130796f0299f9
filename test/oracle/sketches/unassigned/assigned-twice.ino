// which lamp is used changes while running
int lamp = 4;
int spare = 5;
int buzzer;          // set in setup

void setup() {
  buzzer = 9;
  pinMode(lamp, OUTPUT);
  pinMode(spare, OUTPUT);
  pinMode(buzzer, OUTPUT);
  pinMode(2, INPUT_PULLUP);
}

void loop() {
  if (digitalRead(2) == LOW) lamp = 5; else lamp = 4;
  digitalWrite(lamp, HIGH);
  delay(20);
  digitalWrite(lamp, LOW);
  digitalWrite(buzzer, HIGH);
  delay(2);
  digitalWrite(buzzer, LOW);
}
