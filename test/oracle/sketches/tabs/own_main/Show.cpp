#include "Show.h"
void Show::next() {
  digitalWrite(at(step_), LOW);
  step_ = (step_ + 1) % 3;
  digitalWrite(at(step_), HIGH);
}
