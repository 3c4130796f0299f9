#define WINDOWS 3
const byte windowPins[WINDOWS] = {4, 5, 6};
void windowsBegin() { for (byte w = 0; w < WINDOWS; w++) pinMode(windowPins[w], OUTPUT); }
void windowsShow(byte bits) { for (byte w = 0; w < WINDOWS; w++) digitalWrite(windowPins[w], bits & (1 << w) ? HIGH : LOW); }
