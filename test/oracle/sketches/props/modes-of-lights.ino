// state object with function-pointer members, pass by pointer, do-while, goto-less retries, ternary chain of pins
struct Light; 
struct Mode { void (*enter)(Light *); void (*tick)(Light *); };
struct Light { uint8_t r, g, b; const Mode *mode; uint8_t count; };
void redOn(Light *l) { digitalWrite(l->r, HIGH); digitalWrite(l->g, LOW); digitalWrite(l->b, LOW); }
void greenOn(Light *l) { digitalWrite(l->r, LOW); digitalWrite(l->g, HIGH); digitalWrite(l->b, LOW); }
void blink(Light *l) { l->count++; digitalWrite(l->b, l->count & 1); }
void nothing(Light *) {}
const Mode RED = { redOn, nothing };
const Mode GREEN = { greenOn, blink };
Light lights[2] = { { 3, 5, 6, &RED, 0 }, { 9, 10, 11, &GREEN, 0 } };
void change(Light *l, const Mode *m) { l->mode = m; m->enter(l); }
void setup() {
  for (int i = 0; i < 2; i++) {
    Light *l = &lights[i];
    uint8_t pins[] = { l->r, l->g, l->b };
    for (uint8_t p : pins) pinMode(p, OUTPUT);
    change(l, l->mode);
  }
}
void loop() {
  int which = digitalRead(2) ? 0 : 1;
  change(&lights[which], lights[which].mode == &RED ? &GREEN : &RED);
  for (auto &l : lights) l.mode->tick(&l);
  int n = analogRead(A0) / 256;
  digitalWrite(n == 0 ? 3 : n == 1 ? 5 : n == 2 ? 9 : 10, HIGH);
  delay(5);
}
