int led=9;int led2=10;int led3=11;
void setup()
{
pinMode(led,OUTPUT);
pinMode(led2,OUTPUT);
pinMode(led3,OUTPUT);
randomSeed(analogRead(0));
}
void loop()
{
analogWrite(led,random(120)+135);
analogWrite(led2,random(120)+135);
analogWrite(led3,random(120)+135);
delay(random(100));
}
