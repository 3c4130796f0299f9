// Dock panel, big board because of the 16 lamp outputs on the double row.
void setup() {
  pinMode(22, OUTPUT); pinMode(24, OUTPUT); pinMode(26, OUTPUT); pinMode(28, OUTPUT);
  pinMode(30, OUTPUT); pinMode(32, OUTPUT); pinMode(34, OUTPUT); pinMode(36, OUTPUT);
  pinMode(0x17, INPUT_PULLUP);          // 23
  pinMode(25, INPUT_PULLUP);
  pinMode(44, OUTPUT); pinMode(45, OUTPUT); pinMode(46, OUTPUT);
  Serial1.begin(9600);
}
void loop() {
  byte level = analogRead(A8) >> 2;
  analogWrite(44, level);
  analogWrite(45, 255 - level);
  analogWrite(46, level / 2);
  bool left = digitalRead(23) == LOW;
  bool right = digitalRead(25) == LOW;
  digitalWrite(22, left);  digitalWrite(24, left);  digitalWrite(26, left);  digitalWrite(28, left);
  digitalWrite(30, right); digitalWrite(32, right); digitalWrite(34, right); digitalWrite(36, right);
  if (Serial1.available()) Serial1.write(Serial1.read());
  delay(15);
}
