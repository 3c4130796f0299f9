const int sensor = 18, siren = 6, arm = 30;
volatile bool alarm = false;
void onSensor() {
  alarm = true;
  detachInterrupt(digitalPinToInterrupt(sensor));
}
void setup() {
  pinMode(sensor, INPUT_PULLUP);
  pinMode(arm, INPUT_PULLUP);
  pinMode(siren, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(sensor), onSensor, FALLING);
}
void loop() {
  if (alarm) {
    tone(siren, 900, 5);
    if (digitalRead(arm) == LOW) {
      alarm = false;
      attachInterrupt(digitalPinToInterrupt(sensor), onSensor, FALLING);
    }
  }
}
