// Fog choir: the nearer a hand, the higher the note.
#include <NewPing.h>

#define TRIGGER 12
#define ECHO 13
#define VOICE 9
NewPing ping(TRIGGER, ECHO, 120);

template <typename T>
T limit(T value, T low, T high) {
  return value < low ? low : value > high ? high : value;
}

void setup() {}

void loop() {
  unsigned int distance = ping.ping_cm();
  if (distance > 0) tone(VOICE, 200 + 8 * limit<unsigned int>(120 - distance, 0, 120));
  else noTone(VOICE);
  delay(40);
}
