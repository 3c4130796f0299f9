int relay;
int sensor;
const int board = 2;

void choosePins() {
  if (board == 1) {
    relay = 5;
    sensor = A0;
  } else if (board == 2) {
    relay = 7;
    sensor = A3;
  }
}

void setup() {
  choosePins();
  pinMode(relay, OUTPUT);
}

void loop() {
  digitalWrite(relay, analogRead(sensor) > 512 ? HIGH : LOW);
  delay(25);
}
