#define LAMP_A 3
#define LAMP LAMP_A
#define STATUS LAMP
#define RELAY_BASE 7
#define RELAY_PUMP RELAY_BASE
#define RELAY_FAN (RELAY_BASE + 1)
#define RELAY_VALVE (RELAY_FAN + 1)
#define ACTIVE LOW
#define IDLE !ACTIVE
#define BUTTON /* left one */ 2 // grey wire
#define OUT OUTPUT

void setup() {
  pinMode(STATUS, OUT);
  pinMode(RELAY_PUMP, OUT);  digitalWrite(RELAY_PUMP, IDLE);
  pinMode(RELAY_FAN, OUT);   digitalWrite(RELAY_FAN, IDLE);
  pinMode(RELAY_VALVE, OUT); digitalWrite(RELAY_VALVE, IDLE);
  pinMode(BUTTON, INPUT_PULLUP);
}

void loop() {
  int pressed = digitalRead(BUTTON) == ACTIVE;
  digitalWrite(STATUS, pressed);
  digitalWrite(RELAY_PUMP, pressed ? ACTIVE : IDLE);
  if (pressed) {
    delay(100);
    digitalWrite(RELAY_FAN, ACTIVE);
    delay(100);
    digitalWrite(RELAY_VALVE, ACTIVE);
    delay(200);
  }
  digitalWrite(RELAY_VALVE, IDLE);
  digitalWrite(RELAY_FAN, IDLE);
}
