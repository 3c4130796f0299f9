#ifndef HAL_H_
#define HAL_H_
#include <Arduino.h>

namespace hal {

constexpr uint8_t LED_OK = 4;
constexpr uint8_t LED_BUSY = LED_OK + 1;
extern const uint8_t CLICKER;

class Led {
 public:
  explicit constexpr Led(uint8_t pin) : pin_{pin} {}
  void begin() const { pinMode(pin_, OUTPUT); }
  void set(bool on) const { digitalWrite(pin_, on); }
 private:
  const uint8_t pin_;
};

void init();
void click();

}  // namespace hal
#endif
