// Crane: two motors through drivers, four end switches. No names, it was written in one evening.
int speedNow = 0;
void setup() {
  Serial.begin(9600);
  pinMode(5, OUTPUT); pinMode(6, OUTPUT);
  pinMode(7, OUTPUT); pinMode(8, OUTPUT);
  pinMode(2, INPUT); pinMode(3, INPUT); pinMode(4, INPUT); pinMode(12, INPUT);
  digitalWrite(2, HIGH); digitalWrite(3, HIGH);   // pull-ups the old way
}
void loop() {
  speedNow = analogRead(0) / 4;
  if (!digitalRead(2)) { analogWrite(5, 0); digitalWrite(7, LOW); }
  else { analogWrite(5, speedNow); digitalWrite(7, HIGH); }
  if (!digitalRead(3)) { analogWrite(6, 0); digitalWrite(8, LOW); }
  else { analogWrite(6, speedNow); digitalWrite(8, HIGH); }
  if (digitalRead(4) && digitalRead(12)) Serial.println("end of rail");
  delay(10);
}
