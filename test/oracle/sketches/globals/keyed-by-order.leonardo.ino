const int button1 = 4, button2 = 5, button3 = 6;
const int lamp1 = 8, lamp2 = 9, lamp3 = 10;
static int score = 0;

void setup() {
  pinMode(button1, INPUT_PULLUP);
  pinMode(button2, INPUT_PULLUP);
  pinMode(button3, INPUT_PULLUP);
  pinMode(lamp1, OUTPUT);
  pinMode(lamp2, OUTPUT);
  pinMode(lamp3, OUTPUT);
}

void loop() {
  if (score == 0 && digitalRead(button2) == LOW) score = 1;
  if (score == 1 && digitalRead(button1) == LOW) score = 2;
  if (score == 2 && digitalRead(button3) == LOW) score = 3;
  digitalWrite(lamp1, score >= 1);
  digitalWrite(lamp2, score >= 2);
  digitalWrite(lamp3, score >= 3);
  if (score == 3) {
    delay(200);
    score = 0;
  }
}
