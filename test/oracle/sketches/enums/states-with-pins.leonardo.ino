enum Where { HARBOUR, SEA, ISLAND };
Where where = HARBOUR;
const int HARBOUR_LAMP = 4, SEA_LAMP = 6, ISLAND_LAMP = 8;
const int GO = 2;

int lampOf(Where w) {
  switch (w) {
    case HARBOUR: return HARBOUR_LAMP;
    case SEA: return SEA_LAMP;
    default: return ISLAND_LAMP;
  }
}

void setup() {
  pinMode(HARBOUR_LAMP, OUTPUT);
  pinMode(SEA_LAMP, OUTPUT);
  pinMode(ISLAND_LAMP, OUTPUT);
  pinMode(GO, INPUT_PULLUP);
}

void loop() {
  digitalWrite(lampOf(where), HIGH);
  delay(15);
  if (digitalRead(GO) == LOW) {
    digitalWrite(lampOf(where), LOW);
    where = where == ISLAND ? HARBOUR : Where(where + 1);
  }
}
