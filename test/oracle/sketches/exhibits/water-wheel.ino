#define ON LOW
#define OFF HIGH

const int PUMP_RELAY = 4;
const int VALVE_RELAY = 5;
const int LAMP_RELAY = 6;
const int FLOAT_LOW = 10;
const int FLOAT_HIGH = 11;
const int START = 12;

enum State { IDLE, FILLING, RUNNING, DRAINING };
State state = IDLE;
unsigned long since = 0;

void enter(State next) {
  state = next;
  since = millis();
  switch (next) {
    case IDLE:
      relay(PUMP_RELAY, OFF);
      relay(VALVE_RELAY, OFF);
      relay(LAMP_RELAY, OFF);
      break;
    case FILLING:
      relay(VALVE_RELAY, ON);
      relay(LAMP_RELAY, ON);
      break;
    case RUNNING:
      relay(VALVE_RELAY, OFF);
      relay(PUMP_RELAY, ON);
      break;
    case DRAINING:
      relay(PUMP_RELAY, OFF);
      break;
  }
}

void relay(int pin, int level) {
  digitalWrite(pin, level);
  pinMode(pin, OUTPUT);
}

bool elapsed(unsigned long ms) { return millis() - since >= ms; }

void setup() {
  pinMode(FLOAT_LOW, INPUT_PULLUP);
  pinMode(FLOAT_HIGH, INPUT_PULLUP);
  pinMode(START, INPUT_PULLUP);
  enter(IDLE);
}

void loop() {
  switch (state) {
    case IDLE:
      if (!digitalRead(START)) enter(FILLING);
      break;
    case FILLING:
      if (!digitalRead(FLOAT_HIGH) || elapsed(50)) enter(RUNNING);
      break;
    case RUNNING:
      if (elapsed(100)) enter(DRAINING);
      break;
    case DRAINING:
      if (!digitalRead(FLOAT_LOW) || elapsed(60)) enter(IDLE);
      break;
  }
}
