uint8_t valves = 40;
uint8_t pump = 7;
uint8_t glass = A15;
uint8_t start = A14;
boolean running = false;
boolean before = true;

void setup() {
  pinMode(valves, OUTPUT);
  pinMode(valves + 1, OUTPUT);
  pinMode(valves + 2, OUTPUT);
  pinMode(pump, OUTPUT);
  pinMode(start, INPUT_PULLUP);
}

void loop() {
  boolean now = digitalRead(start);
  if (before && !now) running = !running;
  before = now;
  if (running) {
    analogWrite(pump, 200);
    digitalWrite(valves, HIGH);
    delay(20);
    digitalWrite(valves, LOW);
    digitalWrite(valves + 1, HIGH);
    delay(20);
    digitalWrite(valves + 1, LOW);
    digitalWrite(valves + 2, analogRead(glass) > 100);
  } else {
    analogWrite(pump, 0);
    digitalWrite(valves + 2, LOW);
  }
}
