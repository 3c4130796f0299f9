const byte cupPin = 2;
const byte gaugePin = 9;
volatile unsigned int turns = 0;
unsigned long last = 0;

void onTurn() { turns++; }

void setup() {
  pinMode(cupPin, INPUT_PULLUP);
  pinMode(gaugePin, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(cupPin), onTurn, FALLING);
}
void loop() {
  if (millis() - last > 50) {
    last = millis();
    noInterrupts();
    unsigned int n = turns;
    turns = 0;
    interrupts();
    analogWrite(gaugePin, min(n * 20, 255u));
  }
}
