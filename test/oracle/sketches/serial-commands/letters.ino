// r, g, b toggle a lamp; 0 puts all out
void setup() {
  Serial.begin(9600);
  pinMode(9, OUTPUT);
  pinMode(10, OUTPUT);
  pinMode(11, OUTPUT);
}
void loop() {
  if (Serial.available() > 0) {
    char c = Serial.read();
    switch (c) {
      case 'r': digitalWrite(9, !digitalRead(9)); break;
      case 'g': digitalWrite(10, !digitalRead(10)); break;
      case 'b': digitalWrite(11, !digitalRead(11)); break;
      case '0':
        digitalWrite(9, LOW);
        digitalWrite(10, LOW);
        digitalWrite(11, LOW);
        break;
      default:
        Serial.println(F("r, g, b or 0"));
    }
  }
}
