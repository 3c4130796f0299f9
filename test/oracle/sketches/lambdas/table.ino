using Step = void (*)();
const Step steps[] = {
  []() { digitalWrite(5, HIGH); },
  []() { digitalWrite(6, HIGH); },
  []() { digitalWrite(5, LOW); digitalWrite(6, LOW); },
};
void setup() {
  pinMode(5, OUTPUT);
  pinMode(6, OUTPUT);
}
void loop() {
  for (auto step : steps) {
    step();
    delay(12);
  }
}
