// Engine room: restart button on the reset line, its lamp shows that the show runs; the fan follows the heat.
const int runLamp = 7;
const int fan = 6;
const int heat = A0;

void setup() {
  pinMode(runLamp, OUTPUT);
  pinMode(fan, OUTPUT);
  digitalWrite(runLamp, HIGH);
}

void loop() {
  int reading = analogRead(heat);
  analogWrite(fan, reading > 512 ? 255 : reading / 2);
  delay(100);
}
