// Lighthouse model, first light: one lamp on pin 9, one button on pin 4.

void setup()
{
  pinMode(9, OUTPUT);
  pinMode(4, INPUT_PULLUP);
}

void loop()
{
  if (digitalRead(4) == LOW)
  {
    digitalWrite(9, HIGH);
    delay(400);
    digitalWrite(9, LOW);
    delay(1600);
  }
  else
  {
    digitalWrite(9, LOW);
  }
}
