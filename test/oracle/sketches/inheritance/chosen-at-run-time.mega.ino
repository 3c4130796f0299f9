struct Show { virtual void run() { digitalWrite(30, HIGH); delay(2); digitalWrite(30, LOW); } };
struct Long : Show { void run() { digitalWrite(31, HIGH); delay(4); digitalWrite(31, LOW); } };
struct Longer : Long { void run() { Long::run(); digitalWrite(32, HIGH); delay(4); digitalWrite(32, LOW); } };
Show a; Long b; Longer c;
void setup() { for (int p = 30; p < 33; p++) pinMode(p, OUTPUT); }
void loop() {
  Show *shows[] = { &a, &b, &c };
  int n = analogRead(A0) / 350;
  shows[n]->run();
}
