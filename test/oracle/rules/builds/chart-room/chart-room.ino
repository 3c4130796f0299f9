// Chart room: a position receiver on the second port, the console stays for the computer.
const unsigned long RATE = 9600;
const int fixLamp = 13;

void setup() {
  Serial.begin(115200);
  Serial1.begin(RATE);
  pinMode(fixLamp, OUTPUT);
}

void loop() {
  while (Serial1.available() > 0) {
    char c = Serial1.read();
    digitalWrite(fixLamp, c == '$');
    Serial.write(c);
  }
}
