struct Lamp;
void light(Lamp lamp);
int pinFor(int n);
struct Lamp { int pin; };
Lamp make(int pin);
Lamp bow = make(4);
Lamp stern(make(pinFor(2)));

void setup() { pinMode(bow.pin, OUTPUT); pinMode(stern.pin, OUTPUT); }
void loop() { light(bow); light(stern); }
Lamp make(int pin) { Lamp l; l.pin = pin; return l; }
int pinFor(int n) { return n * 4; }
void light(Lamp lamp) { digitalWrite(lamp.pin, HIGH); delay(3); digitalWrite(lamp.pin, LOW); }
