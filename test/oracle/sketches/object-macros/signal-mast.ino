#define RED_LAMP    10
#define YELLOW_LAMP 11
#define GREEN_LAMP  12
#define STEP_BUTTON 3
#define STEP_TIME   150   // ms

#define ON  HIGH
#define OFF LOW

int phase = 0;

void show(int red, int yellow, int green)
{
  digitalWrite(RED_LAMP, red);
  digitalWrite(YELLOW_LAMP, yellow);
  digitalWrite(GREEN_LAMP, green);
}

void setup()
{
  pinMode(RED_LAMP, OUTPUT);
  pinMode(YELLOW_LAMP, OUTPUT);
  pinMode(GREEN_LAMP, OUTPUT);
  pinMode(STEP_BUTTON, INPUT_PULLUP);
  show(ON, OFF, OFF);
}

void loop()
{
  if (digitalRead(STEP_BUTTON) == LOW)
  {
    phase = (phase + 1) % 4;
    if (phase == 0) show(ON, OFF, OFF);
    if (phase == 1) show(ON, ON, OFF);
    if (phase == 2) show(OFF, OFF, ON);
    if (phase == 3) show(OFF, ON, OFF);
    delay(STEP_TIME);
  }
}
