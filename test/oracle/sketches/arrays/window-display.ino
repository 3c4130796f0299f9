// Twelve windows of the town hall, lit one after the other in the evening.
const byte windowPins[12] = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13};
const byte order[12] = {3, 0, 7, 1, 9, 2, 11, 4, 10, 5, 8, 6};

void setup()
{
  for (int i = 0; i < 12; i++)
  {
    pinMode(windowPins[i], OUTPUT);
  }
}

void loop()
{
  for (int i = 0; i < 12; i++)
  {
    digitalWrite(windowPins[order[i]], HIGH);
    delay(30);
  }
  for (int i = 11; i >= 0; i--)
  {
    digitalWrite(windowPins[order[i]], LOW);
    delay(30);
  }
}
