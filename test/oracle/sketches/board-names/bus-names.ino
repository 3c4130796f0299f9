// Shift register chain bit by bit, on the pins of the bus.
void setup() {
  pinMode(SS, OUTPUT);
  pinMode(MOSI, OUTPUT);
  pinMode(SCK, OUTPUT);
  pinMode(MISO, INPUT);
}

void send(byte data) {
  digitalWrite(SS, LOW);
  shiftOut(MOSI, SCK, MSBFIRST, data);
  digitalWrite(SS, HIGH);
}

byte pattern = 1;

void loop() {
  send(pattern);
  pattern = pattern << 1 | pattern >> 7;
  if (digitalRead(MISO)) send(0);
  delay(40);
}
