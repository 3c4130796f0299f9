// Escape room: reactor panel. Commands by the game master over USB.
#define RELAY_DOOR 4
#define RELAY_FOG 5
#define STATUS_R 9
#define STATUS_G 10
#define STATUS_B 11

const uint8_t SWITCHES[] = {2, 3, 7, 8, 12};
const bool SOLUTION[] = {1, 0, 1, 1, 0};
#define N_SWITCHES (sizeof(SWITCHES) / sizeof(SWITCHES[0]))

void colour(byte r, byte g, byte b) {
  analogWrite(STATUS_R, r);
  analogWrite(STATUS_G, g);
  analogWrite(STATUS_B, b);
}

bool solved() {
  for (unsigned i = 0; i < N_SWITCHES; i++)
    if (digitalRead(SWITCHES[i]) != SOLUTION[i]) return false;
  return true;
}

void command(char c) {
  switch (c) {
    case 'o': digitalWrite(RELAY_DOOR, HIGH); break;
    case 'c': digitalWrite(RELAY_DOOR, LOW); break;
    case 'f':
      digitalWrite(RELAY_FOG, HIGH);
      delay(200);
      digitalWrite(RELAY_FOG, LOW);
      break;
    case 'r': colour(255, 0, 0); break;
    default: return;
  }
  Serial1.println(c);
}

void setup() {
  Serial1.begin(9600);
  for (uint8_t pin : SWITCHES) pinMode(pin, INPUT_PULLUP);
  pinMode(RELAY_DOOR, OUTPUT);
  pinMode(RELAY_FOG, OUTPUT);
  colour(255, 0, 0);
}

void loop() {
  static bool done = false;
  if (!done && solved()) {
    done = true;
    colour(0, 255, 0);
    digitalWrite(RELAY_DOOR, HIGH);
  }
  while (Serial1.available() > 0) command(Serial1.read());
}
