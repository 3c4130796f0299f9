// Tide gauge: ultrasonic head on 7 (trigger) and 8 (echo), eight lamps as a bar on 2..6 and 9..11.
long cm;

void setup() {
  Serial.begin(115200);
  pinMode(7, OUTPUT);
  pinMode(8, INPUT);
  pinMode(2, OUTPUT);
  pinMode(3, OUTPUT);
  pinMode(4, OUTPUT);
  pinMode(5, OUTPUT);
  pinMode(6, OUTPUT);
  pinMode(9, OUTPUT);
  pinMode(10, OUTPUT);
  pinMode(11, OUTPUT);
}

void loop() {
  digitalWrite(7, LOW);
  delayMicroseconds(2);
  digitalWrite(7, HIGH);
  delayMicroseconds(10);
  digitalWrite(7, LOW);
  cm = pulseIn(8, HIGH, 3000) / 58;
  digitalWrite(2, cm < 10);
  digitalWrite(3, cm < 20);
  digitalWrite(4, cm < 30);
  digitalWrite(5, cm < 40);
  digitalWrite(6, cm < 50);
  digitalWrite(9, cm < 60);
  digitalWrite(10, cm < 70);
  digitalWrite(11, cm < 80);
  Serial.println(cm);
  delay(60);
}
