String line;
const int pump = 6, light = 7;
void obey(const String &word) {
  if (word == "pump on") digitalWrite(pump, HIGH);
  else if (word == "pump off") digitalWrite(pump, LOW);
  else if (word.startsWith("dim")) analogWrite(5, word.substring(4).toInt());
  else if (word == "light") digitalWrite(light, !digitalRead(light));
}
void setup() {
  Serial.begin(9600);
  pinMode(pump, OUTPUT);
  pinMode(light, OUTPUT);
  pinMode(5, OUTPUT);
}
void loop() {
  while (Serial.available()) {
    char c = Serial.read();
    if (c == '\n') { obey(line); line = ""; }
    else line += c;
  }
}
