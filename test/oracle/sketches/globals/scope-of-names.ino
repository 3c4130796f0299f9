int pin = 4;          // never written

namespace { const int hidden = 5; }

struct Holder { static const int pin = 6; };

void blinkOnce(int pin) {
  digitalWrite(pin, HIGH);
  delay(3);
  digitalWrite(pin, LOW);
}

void setup() {
  pinMode(pin, OUTPUT);
  pinMode(hidden, OUTPUT);
  pinMode(Holder::pin, OUTPUT);
  {
    int pin = 7;
    pinMode(pin, OUTPUT);
  }
  for (int pin = 8; pin < 10; pin++) pinMode(pin, OUTPUT);
}

void loop() {
  int hidden = 10;
  pinMode(hidden, OUTPUT);
  blinkOnce(pin);
  blinkOnce(::pin + 1);
  blinkOnce(Holder::pin);
  blinkOnce(hidden);
  delay(10);
}
