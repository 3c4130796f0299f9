void show(bool on) { digitalWrite(4, on); }
void show(int level) { analogWrite(5, level); }
void show(byte pin, byte level) { digitalWrite(pin, level); }
void show(const char *text) { Serial.println(text); digitalWrite(7, HIGH); }

void setup() {
  Serial.begin(9600);
  pinMode(4, OUTPUT); pinMode(5, OUTPUT); pinMode(6, OUTPUT); pinMode(7, OUTPUT);
}
void loop() {
  show(true);
  show(100);
  show((byte)6, (byte)HIGH);
  show("ahoy");
  delay(20);
  show(false);
  show(0);
  show((byte)6, (byte)LOW);
  digitalWrite(7, LOW);
  delay(20);
}
