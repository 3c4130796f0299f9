#define COIN_IN     7
#define LAMP_READY  9
#define LAMP_RUN    10
#define MOTOR       5
#define CREDIT_TIME 300

unsigned long until = 0;
int lastCoin = HIGH;

void setup() {
  pinMode(COIN_IN, INPUT_PULLUP);
  pinMode(LAMP_READY, OUTPUT);
  pinMode(LAMP_RUN, OUTPUT);
  pinMode(MOTOR, OUTPUT);
}

void loop() {
  int coin = digitalRead(COIN_IN);
  if (coin == LOW && lastCoin == HIGH) until = millis() + CREDIT_TIME;
  lastCoin = coin;
  bool running = millis() < until;
  digitalWrite(MOTOR, running);
  digitalWrite(LAMP_RUN, running);
  digitalWrite(LAMP_READY, !running);
}
