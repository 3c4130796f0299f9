// Scoreboard of the regatta: what the judges' computer sends is shown on a row of lamps.
const byte score[] = { 4, 5, 6, 7 };
const byte bell = 10;

void setup() {
  Serial.begin(9600);
  for (byte pin : score) pinMode(pin, OUTPUT);
  pinMode(bell, OUTPUT);
}

void loop() {
  if (Serial.available() == 0) return;
  int value = Serial.parseInt();
  for (byte i = 0; i < 4; i++) digitalWrite(score[i], value > i);
  tone(bell, 880, 100);
}
