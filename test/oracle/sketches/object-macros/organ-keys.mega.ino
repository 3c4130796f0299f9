// Little harbour organ: 8 keys, one speaker, a volume lamp.
#define KEY_C   30
#define KEY_D   31
#define KEY_E   32
#define KEY_F   33
#define KEY_G   34
#define KEY_A   35
#define KEY_B   36
#define KEY_C2  37
#define SPEAKER 11
#define LAMP    13

#define NOTE_C 262
#define NOTE_D 294
#define NOTE_E 330
#define NOTE_F 349
#define NOTE_G 392
#define NOTE_A 440
#define NOTE_B 494
#define NOTE_C2 523

void setup() {
  pinMode(KEY_C, INPUT_PULLUP);
  pinMode(KEY_D, INPUT_PULLUP);
  pinMode(KEY_E, INPUT_PULLUP);
  pinMode(KEY_F, INPUT_PULLUP);
  pinMode(KEY_G, INPUT_PULLUP);
  pinMode(KEY_A, INPUT_PULLUP);
  pinMode(KEY_B, INPUT_PULLUP);
  pinMode(KEY_C2, INPUT_PULLUP);
  pinMode(SPEAKER, OUTPUT);
  pinMode(LAMP, OUTPUT);
}

int chosen() {
  if (!digitalRead(KEY_C)) return NOTE_C;
  if (!digitalRead(KEY_D)) return NOTE_D;
  if (!digitalRead(KEY_E)) return NOTE_E;
  if (!digitalRead(KEY_F)) return NOTE_F;
  if (!digitalRead(KEY_G)) return NOTE_G;
  if (!digitalRead(KEY_A)) return NOTE_A;
  if (!digitalRead(KEY_B)) return NOTE_B;
  if (!digitalRead(KEY_C2)) return NOTE_C2;
  return 0;
}

void loop() {
  int note = chosen();
  if (note != 0) {
    tone(SPEAKER, note);
    digitalWrite(LAMP, HIGH);
  } else {
    noTone(SPEAKER);
    digitalWrite(LAMP, LOW);
  }
}
