void stair(int lower, int upper, int ms)
{
    if (lower < upper)
        for (int s = lower; s <= upper; s++) { digitalWrite(s, HIGH); delay(ms); }
    else
        for (int s = lower; s >= upper; s--) { digitalWrite(s, HIGH); delay(ms); }
}
void dark(int from, int to) { for (int s = from; s <= to; s++) digitalWrite(s, LOW); }

void setup()
{
    for (int s = 4; s <= 11; s++) pinMode(s, OUTPUT);
    pinMode(2, INPUT_PULLUP);
    pinMode(3, INPUT_PULLUP);
}
void loop()
{
    if (!digitalRead(2)) stair(4, 11, 10);
    if (!digitalRead(3)) stair(11, 4, 10);
    delay(20);
    dark(4, 11);
}
