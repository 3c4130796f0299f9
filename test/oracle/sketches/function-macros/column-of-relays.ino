// eight relays, low = on. The macro names are the labels on the cabinet.
#define R(n)        (n < 3 ? 2 + n : 3 + n)
#define SET(n, s)   digitalWrite(R(n), (s) ? LOW : HIGH)
#define EVERY(ms)   for (static unsigned long t_ = 0; millis() - t_ >= (ms); t_ = millis())

byte counter;

void setup()
{
  for (byte n = 0; n < 8; n++)
  {
    SET(n, 0);
    pinMode(R(n), OUTPUT);
  }
}

void loop()
{
  EVERY(40)
  {
    counter++;
    SET(0, counter & 1);
    SET(1, counter & 2);
    SET(2, counter & 4);
    SET(3, counter & 8);
  }
  SET(7, counter > 8);
}
