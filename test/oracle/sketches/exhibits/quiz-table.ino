// Four players, first press wins
const byte PLAYERS = 4;
struct Player {
  byte button;
  byte led;
  unsigned int score;
  bool locked;
};
Player players[PLAYERS] = {
  { 2, 6, 0, false },
  { 3, 7, 0, false },
  { 4, 8, 0, false },
  { 5, 9, 0, false }
};
const byte resetButton = A0;
const byte buzzer = 11;
int winner = -1;

void setup() {
  Serial.begin(9600);
  for (byte p = 0; p < PLAYERS; p++) {
    pinMode(players[p].button, INPUT_PULLUP);
    pinMode(players[p].led, OUTPUT);
  }
  pinMode(resetButton, INPUT_PULLUP);
  pinMode(buzzer, OUTPUT);
}

void allOff() {
  for (auto &p : players) {
    digitalWrite(p.led, LOW);
    p.locked = false;
  }
}

void announce(Player &p) {
  digitalWrite(p.led, HIGH);
  p.score++;
  for (int i = 0; i < 3; i++) {
    digitalWrite(buzzer, HIGH);
    delay(20);
    digitalWrite(buzzer, LOW);
    delay(20);
  }
}

void loop() {
  if (winner < 0) {
    for (byte p = 0; p < PLAYERS; p++) {
      if (!players[p].locked && digitalRead(players[p].button) == LOW) {
        winner = p;
        announce(players[winner]);
        break;
      }
    }
  } else if (digitalRead(resetButton) == LOW || Serial.read() == 'r') {
    allOff();
    winner = -1;
  }
}
