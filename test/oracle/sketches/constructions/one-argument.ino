const int trigger = 3;
int echo = 5;
struct Wire1 { Wire1(int p) : p(p) {} int p; };
Wire1 a(trigger);
Wire1 b(echo);
Wire1 c((int)7);
Wire1 d = 8;
Wire1 e{A0};
Wire1 f[] = {9, 10};
void setup() {
  pinMode(a.p, OUTPUT); pinMode(b.p, OUTPUT); pinMode(c.p, OUTPUT); pinMode(d.p, OUTPUT); pinMode(e.p, OUTPUT);
  for (auto &w : f) pinMode(w.p, OUTPUT);
}
void loop() {
  digitalWrite(a.p, HIGH); digitalWrite(b.p, HIGH); digitalWrite(c.p, HIGH); digitalWrite(d.p, HIGH);
  digitalWrite(e.p, HIGH); digitalWrite(f[0].p, HIGH); digitalWrite(f[1].p, HIGH);
  delay(4);
  digitalWrite(a.p, LOW); digitalWrite(b.p, LOW); digitalWrite(c.p, LOW); digitalWrite(d.p, LOW);
  digitalWrite(e.p, LOW); digitalWrite(f[0].p, LOW); digitalWrite(f[1].p, LOW);
  delay(4);
}
