byte first = 9, second = 10, third = 11;
unsigned int width = 600;

void pulse(byte pin, unsigned int us) {
  digitalWrite(pin, HIGH);
  delayMicroseconds(us);
  digitalWrite(pin, LOW);
}

void setup() {
  pinMode(first, OUTPUT);
  pinMode(second, OUTPUT);
  pinMode(third, OUTPUT);
}

void loop() {
  pulse(first, width);
  pulse(second, width + 200);
  pulse(third, 2400 - width);
  width += 10;
  if (width > 2000) width = 600;
  delay(15);
}
