#define ENC_A 2
#define ENC_B 3
#define LAMP_L 9
#define LAMP_R 10
volatile int position = 0;
void turned() {
  if (digitalRead(ENC_A) == digitalRead(ENC_B)) position++;
  else position--;
}
void setup() {
  pinMode(ENC_A, INPUT_PULLUP);
  pinMode(ENC_B, INPUT_PULLUP);
  pinMode(LAMP_L, OUTPUT);
  pinMode(LAMP_R, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(ENC_A), turned, CHANGE);
}
void loop() {
  digitalWrite(LAMP_L, position < 0);
  digitalWrite(LAMP_R, position > 0);
}
