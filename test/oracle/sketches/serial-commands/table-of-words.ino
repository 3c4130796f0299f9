#include <string.h>
struct Command { const char *word; uint8_t pin; uint8_t level; };
const Command commands[] = {
  {"light", 4, HIGH}, {"dark", 4, LOW}, {"open", 7, HIGH}, {"close", 7, LOW},
};
char line[24];
uint8_t used;
bool match(const char *text, const Command &c) { return strcmp(text, c.word) == 0; }
void setup() {
  Serial.begin(9600);
  for (auto &c : commands) pinMode(c.pin, OUTPUT);
}
void loop() {
  while (Serial.available()) {
    int c = Serial.read();
    if (c == '\n') {
      line[used] = '\0';
      used = 0;
      char *word = strtok(line, " ");
      for (size_t i = 0; word && i < sizeof commands / sizeof *commands; i++)
        if (match(word, commands[i])) digitalWrite(commands[i].pin, commands[i].level);
    } else if (used < sizeof line - 1) line[used++] = c;
  }
}
