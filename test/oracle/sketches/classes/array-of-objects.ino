struct Led {
  Led(int p) : pin(p) {}
  void init() { pinMode(pin, OUTPUT); }
  void set(int v) { digitalWrite(pin, v); }
  int pin;
};

Led row[] = { Led(2), Led(3), Led(4), {5} };
Led *picked[] = { &row[3], &row[0] };

void setup() {
  for (int i = 0; i < 4; i++) row[i].init();
}
void loop() {
  for (auto &led : row) { led.set(HIGH); delay(6); }
  picked[0]->set(LOW);
  picked[1]->set(LOW);
  delay(6);
  row[1].set(LOW);
  row[2].set(LOW);
}
