struct Node { uint8_t pin; Node *next; };
Node c = {44, nullptr}, b = {45, &c}, a = {46, &b};
Node *head = &a;
void setup() {
  for (Node *n = head; n; n = n->next) pinMode(n->pin, OUTPUT);
}
void loop() {
  for (Node *n = head; n != NULL; n = n->next) {
    digitalWrite(n->pin, HIGH);
    delay(4);
    digitalWrite(n->pin, LOW);
  }
}
