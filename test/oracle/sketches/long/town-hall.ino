/*
   The town hall of the harbour model, one controller for everything in it.
   Clock tower, cellar pump, portal, barometer, archive fan, watchman's horn, lantern.
*/

// ---------------------------------------------------------------------------
// Clock tower: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define CLOCK_TOWER_LAMP 9
#define CLOCK_TOWER_FLASH 4
#define CLOCK_TOWER_STEP 9

int clockTowerLevel = 0;
int clockTowerChange = CLOCK_TOWER_STEP;
unsigned long clockTowerAt = 0;

void clockTowerSetup()
{
  pinMode(CLOCK_TOWER_LAMP, OUTPUT);
  pinMode(CLOCK_TOWER_FLASH, OUTPUT);
}

void clockTowerLoop(unsigned long now)
{
  if (now - clockTowerAt < 4)
  {
    return;
  }
  clockTowerAt = now;
  clockTowerLevel += clockTowerChange;
  if (clockTowerLevel > 255)
  {
    clockTowerLevel = 255;
    clockTowerChange = -CLOCK_TOWER_STEP;
    digitalWrite(CLOCK_TOWER_FLASH, HIGH);
  }
  if (clockTowerLevel < 0)
  {
    clockTowerLevel = 0;
    clockTowerChange = CLOCK_TOWER_STEP;
    digitalWrite(CLOCK_TOWER_FLASH, LOW);
  }
  analogWrite(CLOCK_TOWER_LAMP, clockTowerLevel);
}

/* Cellar: two floats, one pump, one alarm lamp. The pump runs until the lower float falls. */
const uint8_t cellarLow = 2, cellarHigh = 3;
const uint8_t cellarMotor = 7;
const uint8_t cellarAlarm = 8;
static bool cellarRunning = false;
static unsigned long cellarSince;

static void cellarMotorTo(bool on) {
  if (on != cellarRunning) {
    cellarSince = millis();
    cellarRunning = on;
  }
  digitalWrite(cellarMotor, on ? HIGH : LOW);
}

void cellarSetup() {
  pinMode(cellarLow, INPUT_PULLUP);
  pinMode(cellarHigh, INPUT_PULLUP);
  pinMode(cellarMotor, OUTPUT);
  pinMode(cellarAlarm, OUTPUT);
  cellarMotorTo(false);
}

void cellarLoop(unsigned long now) {
  const bool low = digitalRead(cellarLow) == LOW;
  const bool high = digitalRead(cellarHigh) == LOW;
  if (high) {
    cellarMotorTo(true);
  } else if (!low) {
    cellarMotorTo(false);
  }
  // A pump that runs too long has lost its water.
  const bool tooLong = cellarRunning && now - cellarSince > 120;
  digitalWrite(cellarAlarm, tooLong);
  if (tooLong) {
    cellarMotorTo(false);
  }
}

// Portal: a sliding door with two end switches and a light curtain
class PortalDoor {
  public:
    enum State : uint8_t { Shut, Opening, Open, Shutting };

    PortalDoor(uint8_t open, uint8_t shut, uint8_t curtain)
      : openPin(open), shutPin(shut), curtainPin(curtain) {}

    void begin() {
      pinMode(openPin, OUTPUT);
      pinMode(shutPin, OUTPUT);
      pinMode(curtainPin, INPUT_PULLUP);
      rest();
    }

    void update(unsigned long now) {
      const bool broken = digitalRead(curtainPin) == LOW;
      switch (state) {
        case Shut:
          if (broken) go(Opening, now);
          break;
        case Opening:
          digitalWrite(openPin, HIGH);
          if (now - since > travel) { rest(); go(Open, now); }
          break;
        case Open:
          if (!broken && now - since > hold) go(Shutting, now);
          break;
        case Shutting:
          digitalWrite(shutPin, HIGH);
          if (broken) { rest(); go(Opening, now); }
          else if (now - since > travel) { rest(); go(Shut, now); }
          break;
      }
    }

  private:
    void go(State next, unsigned long now) {
      state = next;
      since = now;
    }
    void rest() {
      digitalWrite(openPin, LOW);
      digitalWrite(shutPin, LOW);
    }
    const uint8_t openPin, shutPin, curtainPin;
    State state = Shut;
    unsigned long since = 0;
    static const unsigned long travel = 25, hold = 40;
};

PortalDoor portalDoor(A0, A1, A2);

void portalSetup() { portalDoor.begin(); }
void portalLoop(unsigned long now) { portalDoor.update(now); }

// ===== Barometer =====
// pointer instrument on a PWM pin, knob on an analog one, smoothing over eight readings
#define BAROMETER_KNOB   A3
#define BAROMETER_NEEDLE 10
#define BAROMETER_OVER   12
#define BAROMETER_N      8
int barometer_values[BAROMETER_N];
byte barometer_next = 0;
long barometer_sum = 0;
void barometerSetup() {
  pinMode(BAROMETER_NEEDLE, OUTPUT);
  pinMode(BAROMETER_OVER, OUTPUT);
  for (byte i = 0; i < BAROMETER_N; i++) barometer_values[i] = 0;
}
int barometer_smooth(int fresh) {
  barometer_sum -= barometer_values[barometer_next];
  barometer_values[barometer_next] = fresh;
  barometer_sum += fresh;
  barometer_next = (barometer_next + 1) % BAROMETER_N;
  return barometer_sum / BAROMETER_N;
}
void barometerLoop(unsigned long now) {
  int value = barometer_smooth(analogRead(BAROMETER_KNOB));
  int needle = map(value, 0, 1023, 0, 255);
  needle = constrain(needle, 0, 250);
  analogWrite(BAROMETER_NEEDLE, needle);
  if (value > 900 && (now / 8) % 2) digitalWrite(BAROMETER_OVER, HIGH);
  else digitalWrite(BAROMETER_OVER, LOW);
}

/// Archive
/// speeds: off, low, middle, high, by one key that steps on
uint8_t archive_fan = 5;
uint8_t archive_key = A4;
uint8_t archive_speeds[4] = {0, 90, 160, 255};
uint8_t archive_speed;
uint8_t archive_seen;

void archiveSetup()
{
	pinMode(archive_fan, OUTPUT);
	pinMode(archive_key, INPUT_PULLUP);
}

void archiveLoop(unsigned long now)
{
	(void)now;
	uint8_t key = digitalRead(archive_key);
	if (archive_seen && !key)
		archive_speed = (archive_speed + 1) & 3;
	archive_seen = key;
	analogWrite(archive_fan, archive_speeds[archive_speed]);
}

// Watchman: the keeper's horn, three patterns one after the other
const int watchmanPin = 11;
const int watchmanKey = A5;
const unsigned int watchmanLong[] = { 30, 10, 30, 10, 0 };
const unsigned int watchmanShort[] = { 8, 5, 8, 5, 8, 20, 0 };
const unsigned int watchmanMixed[] = { 8, 5, 30, 5, 8, 15, 0 };
const unsigned int *const watchmanPatterns[] = { watchmanLong, watchmanShort, watchmanMixed };
int watchmanPattern = 0;
int watchmanStep = 0;
unsigned long watchmanStart = 0;
bool watchmanBefore = HIGH;

void watchmanSound(bool on, int hertz = 330) {
  if (on) tone(watchmanPin, hertz);
  else noTone(watchmanPin);
}

void watchmanSetup() {
  pinMode(watchmanPin, OUTPUT);
  pinMode(watchmanKey, INPUT_PULLUP);
}

void watchmanLoop(unsigned long now) {
  bool key = digitalRead(watchmanKey);
  if (key == LOW && watchmanBefore == HIGH) {
    watchmanPattern = (watchmanPattern + 1) % 3;
    watchmanStep = 0;
  }
  watchmanBefore = key;
  unsigned int ms = watchmanPatterns[watchmanPattern][watchmanStep];
  if (ms == 0) {
    watchmanStep = 0;
    return;
  }
  if (now - watchmanStart >= ms) {
    watchmanStart = now;
    watchmanStep++;
    watchmanSound(watchmanStep % 2 == 0);
  }
}

// ---------------------------------------------------------------------------
// Lantern: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define LANTERN_LAMP 6
#define LANTERN_FLASH 13
#define LANTERN_STEP 9

int lanternLevel = 0;
int lanternChange = LANTERN_STEP;
unsigned long lanternAt = 0;

void lanternSetup()
{
  pinMode(LANTERN_LAMP, OUTPUT);
  pinMode(LANTERN_FLASH, OUTPUT);
}

void lanternLoop(unsigned long now)
{
  if (now - lanternAt < 4)
  {
    return;
  }
  lanternAt = now;
  lanternLevel += lanternChange;
  if (lanternLevel > 255)
  {
    lanternLevel = 255;
    lanternChange = -LANTERN_STEP;
    digitalWrite(LANTERN_FLASH, HIGH);
  }
  if (lanternLevel < 0)
  {
    lanternLevel = 0;
    lanternChange = LANTERN_STEP;
    digitalWrite(LANTERN_FLASH, LOW);
  }
  analogWrite(LANTERN_LAMP, lanternLevel);
}

// ---------------------------------------------------------------------------
// everything together
// ---------------------------------------------------------------------------
unsigned long reported = 0;

void report(unsigned long now) {
  if (now - reported < 100) return;
  reported = now;
  Serial.print(F("up for "));
  Serial.print(now / 1000);
  Serial.println(F(" s"));
}

void setup() {
  Serial.begin(115200);
  clockTowerSetup();
  cellarSetup();
  portalSetup();
  barometerSetup();
  archiveSetup();
  watchmanSetup();
  lanternSetup();
}

void loop() {
  unsigned long now = millis();
  clockTowerLoop(now);
  cellarLoop(now);
  portalLoop(now);
  barometerLoop(now);
  archiveLoop(now);
  watchmanLoop(now);
  lanternLoop(now);
  report(now);
}
