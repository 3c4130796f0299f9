int flash = 12;
int shutter = 11;
int beam = A2;
int armLamp = 13;
int wait = 5;

void setup() {
  pinMode(flash, OUTPUT);
  pinMode(shutter, OUTPUT);
  pinMode(armLamp, OUTPUT);
  digitalWrite(armLamp, HIGH);
}

void loop() {
  int seen = analogRead(beam);
  if (seen < 500) {
    digitalWrite(shutter, HIGH);
    delay(wait);
    digitalWrite(flash, HIGH);
    delayMicroseconds(500);
    digitalWrite(flash, LOW);
    digitalWrite(shutter, LOW);
    delay(200);
  }
}
