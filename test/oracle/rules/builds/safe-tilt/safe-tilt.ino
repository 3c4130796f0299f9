// Case guard: a tilt of the showcase sounds the alarm until the key is turned.
#define TILT 4
#define KEY 5
#define SIREN 8

bool alarm = false;

void setup() {
  pinMode(TILT, INPUT_PULLUP);
  pinMode(KEY, INPUT_PULLUP);
  pinMode(SIREN, OUTPUT);
}

void loop() {
  if (digitalRead(TILT) == LOW) alarm = true;
  if (digitalRead(KEY) == LOW) alarm = false;
  digitalWrite(SIREN, alarm);
  delay(10);
}
