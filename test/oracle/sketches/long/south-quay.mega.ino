// South quay only: the half of the harbour that travels to schools.

// ---------------------------------------------------------------------------
// South mole: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define SOUTH_MOLE_LAMP 3
#define SOUTH_MOLE_FLASH 23
#define SOUTH_MOLE_STEP 9

int southMoleLevel = 0;
int southMoleChange = SOUTH_MOLE_STEP;
unsigned long southMoleAt = 0;

void southMoleSetup()
{
  pinMode(SOUTH_MOLE_LAMP, OUTPUT);
  pinMode(SOUTH_MOLE_FLASH, OUTPUT);
}

void southMoleLoop(unsigned long now)
{
  if (now - southMoleAt < 4)
  {
    return;
  }
  southMoleAt = now;
  southMoleLevel += southMoleChange;
  if (southMoleLevel > 255)
  {
    southMoleLevel = 255;
    southMoleChange = -SOUTH_MOLE_STEP;
    digitalWrite(SOUTH_MOLE_FLASH, HIGH);
  }
  if (southMoleLevel < 0)
  {
    southMoleLevel = 0;
    southMoleChange = SOUTH_MOLE_STEP;
    digitalWrite(SOUTH_MOLE_FLASH, LOW);
  }
  analogWrite(SOUTH_MOLE_LAMP, southMoleLevel);
}

/* Fountain: two floats, one pump, one alarm lamp. The pump runs until the lower float falls. */
const uint8_t fountainLow = 28, fountainHigh = 29;
const uint8_t fountainMotor = 30;
const uint8_t fountainAlarm = 31;
static bool fountainRunning = false;
static unsigned long fountainSince;

static void fountainMotorTo(bool on) {
  if (on != fountainRunning) {
    fountainSince = millis();
    fountainRunning = on;
  }
  digitalWrite(fountainMotor, on ? HIGH : LOW);
}

void fountainSetup() {
  pinMode(fountainLow, INPUT_PULLUP);
  pinMode(fountainHigh, INPUT_PULLUP);
  pinMode(fountainMotor, OUTPUT);
  pinMode(fountainAlarm, OUTPUT);
  fountainMotorTo(false);
}

void fountainLoop(unsigned long now) {
  const bool low = digitalRead(fountainLow) == LOW;
  const bool high = digitalRead(fountainHigh) == LOW;
  if (high) {
    fountainMotorTo(true);
  } else if (!low) {
    fountainMotorTo(false);
  }
  // A pump that runs too long has lost its water.
  const bool tooLong = fountainRunning && now - fountainSince > 120;
  digitalWrite(fountainAlarm, tooLong);
  if (tooLong) {
    fountainMotorTo(false);
  }
}

// Runway ------------------------------------------------------------------
int runwayPins[] = { 32, 33, 34, 35 };
#define RUNWAY_COUNT (sizeof(runwayPins) / sizeof(runwayPins[0]))
byte runwayAt = 0;
boolean runwayBack = false;
unsigned long runwayTime = 0;
int runwayPause = 11;

void runwaySetup() {
	for (unsigned int i = 0; i < RUNWAY_COUNT; i++) {
		pinMode(runwayPins[i], OUTPUT);
		digitalWrite(runwayPins[i], LOW);
	}
}

void runwayLoop(unsigned long now) {
	if (now - runwayTime < (unsigned long)runwayPause) return;
	runwayTime = now;
	digitalWrite(runwayPins[runwayAt], LOW);
	if (runwayBack) {
		if (runwayAt == 0) { runwayBack = false; runwayAt++; }
		else runwayAt--;
	} else {
		if (runwayAt == RUNWAY_COUNT - 1) { runwayBack = true; runwayAt--; }
		else runwayAt++;
	}
	digitalWrite(runwayPins[runwayAt], HIGH);
}

// Shed: a sliding door with two end switches and a light curtain
class ShedDoor {
  public:
    enum State : uint8_t { Shut, Opening, Open, Shutting };

    ShedDoor(uint8_t open, uint8_t shut, uint8_t curtain)
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

ShedDoor shedDoor(40, 41, 42);

void shedSetup() { shedDoor.begin(); }
void shedLoop(unsigned long now) { shedDoor.update(now); }

// Casino, an electric die with three pairs of lamps and one in the middle
struct CasinoDie
{
    byte middle, pairA, pairB, key;
    byte value;
};
CasinoDie casinoDie = { 49, 50, 51, 52, 1 };

void casinoShow()
{
    const byte value = casinoDie.value;
    digitalWrite(casinoDie.middle, value % 2 == 1 ? HIGH : LOW);
    digitalWrite(casinoDie.pairA,  value > 1      ? HIGH : LOW);
    digitalWrite(casinoDie.pairB,  value > 3      ? HIGH : LOW);
}

void casinoSetup()
{
    pinMode(casinoDie.middle, OUTPUT);
    pinMode(casinoDie.pairA,  OUTPUT);
    pinMode(casinoDie.pairB,  OUTPUT);
    pinMode(casinoDie.key,    INPUT_PULLUP);
    casinoShow();
}

void casinoLoop(unsigned long)
{
    if (digitalRead(casinoDie.key) == LOW)
    {
        casinoDie.value++;
        if (casinoDie.value > 6) casinoDie.value = 1;
        casinoShow();
    }
}

// Ferry: the keeper's horn, three patterns one after the other
const int ferryPin = 11;
const int ferryKey = 53;
const unsigned int ferryLong[] = { 30, 10, 30, 10, 0 };
const unsigned int ferryShort[] = { 8, 5, 8, 5, 8, 20, 0 };
const unsigned int ferryMixed[] = { 8, 5, 30, 5, 8, 15, 0 };
const unsigned int *const ferryPatterns[] = { ferryLong, ferryShort, ferryMixed };
int ferryPattern = 0;
int ferryStep = 0;
unsigned long ferryStart = 0;
bool ferryBefore = HIGH;

void ferrySound(bool on, int hertz = 330) {
  if (on) tone(ferryPin, hertz);
  else noTone(ferryPin);
}

void ferrySetup() {
  pinMode(ferryPin, OUTPUT);
  pinMode(ferryKey, INPUT_PULLUP);
}

void ferryLoop(unsigned long now) {
  bool key = digitalRead(ferryKey);
  if (key == LOW && ferryBefore == HIGH) {
    ferryPattern = (ferryPattern + 1) % 3;
    ferryStep = 0;
  }
  ferryBefore = key;
  unsigned int ms = ferryPatterns[ferryPattern][ferryStep];
  if (ms == 0) {
    ferryStep = 0;
    return;
  }
  if (now - ferryStart >= ms) {
    ferryStart = now;
    ferryStep++;
    ferrySound(ferryStep % 2 == 0);
  }
}

// ===== Depth =====
// pointer instrument on a PWM pin, knob on an analog one, smoothing over eight readings
#define DEPTH_KNOB   A0
#define DEPTH_NEEDLE 4
#define DEPTH_OVER   A8
#define DEPTH_N      8
int depth_values[DEPTH_N];
byte depth_next = 0;
long depth_sum = 0;
void depthSetup() {
  pinMode(DEPTH_NEEDLE, OUTPUT);
  pinMode(DEPTH_OVER, OUTPUT);
  for (byte i = 0; i < DEPTH_N; i++) depth_values[i] = 0;
}
int depth_smooth(int fresh) {
  depth_sum -= depth_values[depth_next];
  depth_values[depth_next] = fresh;
  depth_sum += fresh;
  depth_next = (depth_next + 1) % DEPTH_N;
  return depth_sum / DEPTH_N;
}
void depthLoop(unsigned long now) {
  int value = depth_smooth(analogRead(DEPTH_KNOB));
  int needle = map(value, 0, 1023, 0, 255);
  needle = constrain(needle, 0, 250);
  analogWrite(DEPTH_NEEDLE, needle);
  if (value > 900 && (now / 8) % 2) digitalWrite(DEPTH_OVER, HIGH);
  else digitalWrite(DEPTH_OVER, LOW);
}

// School. Who was first? Two players, two lamps, one key for the teacher.
enum SchoolQuiz { SCHOOL_NOBODY, SCHOOL_LEFT, SCHOOL_RIGHT };
SchoolQuiz schoolWinner = SCHOOL_NOBODY;
const byte schoolKeys[2] = {A10, A11};
const byte schoolLamps[2] = {A12, A13};

void schoolSetup() {
  for (auto key : schoolKeys) pinMode(key, INPUT_PULLUP);
  for (auto lamp : schoolLamps) pinMode(lamp, OUTPUT);
}

void schoolLoop(unsigned long now) {
  static unsigned long wonAt = 0;
  if (schoolWinner == SCHOOL_NOBODY) {
    for (byte player = 0; player < 2; player++) {
      if (digitalRead(schoolKeys[player]) == LOW) {
        schoolWinner = player == 0 ? SCHOOL_LEFT : SCHOOL_RIGHT;
        wonAt = now;
        digitalWrite(schoolLamps[player], HIGH);
        break;
      }
    }
  } else if (now - wonAt > 50) {
    digitalWrite(schoolLamps[schoolWinner - 1], LOW);
    schoolWinner = SCHOOL_NOBODY;
  }
}

// Tower: lamps follow whoever walks up or down; eye at each end
template <byte FIRST, byte COUNT>
struct TowerStairs {
  static void begin() {
    for (byte p = FIRST; p < FIRST + COUNT; p++) pinMode(p, OUTPUT);
  }
  static void light(byte n, bool on) {
    if (n < COUNT) digitalWrite(FIRST + n, on);
  }
  static void all(bool on) {
    for (byte n = 0; n < COUNT; n++) light(n, on);
  }
};
typedef TowerStairs<14, 3> TowerTheStairs;
int towerEye = A2;
byte towerShown = 0;
unsigned long towerNext = 0;
void towerSetup() {
  TowerTheStairs::begin();
  TowerTheStairs::all(false);
  pinMode(towerEye, INPUT_PULLUP);
}
void towerLoop(unsigned long now) {
  if (now < towerNext) return;
  towerNext = now + 9;
  if (digitalRead(towerEye) == LOW) {
    if (towerShown < 3) TowerTheStairs::light(towerShown++, true);
  } else if (towerShown > 0) {
    TowerTheStairs::light(--towerShown, false);
  }
}

/// Workshop
/// speeds: off, low, middle, high, by one key that steps on
uint8_t workshop_fan = 6;
uint8_t workshop_key = A3;
uint8_t workshop_speeds[4] = {0, 90, 160, 255};
uint8_t workshop_speed;
uint8_t workshop_seen;

void workshopSetup()
{
	pinMode(workshop_fan, OUTPUT);
	pinMode(workshop_key, INPUT_PULLUP);
}

void workshopLoop(unsigned long now)
{
	(void)now;
	uint8_t key = digitalRead(workshop_key);
	if (workshop_seen && !key)
		workshop_speed = (workshop_speed + 1) & 3;
	workshop_seen = key;
	analogWrite(workshop_fan, workshop_speeds[workshop_speed]);
}

// ---------------------------------------------------------------------------
// everything together
// ---------------------------------------------------------------------------
void setup() {
  southMoleSetup();
  fountainSetup();
  runwaySetup();
  shedSetup();
  casinoSetup();
  ferrySetup();
  depthSetup();
  schoolSetup();
  towerSetup();
  workshopSetup();
}

void loop() {
  unsigned long now = millis();
  southMoleLoop(now);
  fountainLoop(now);
  runwayLoop(now);
  shedLoop(now);
  casinoLoop(now);
  ferryLoop(now);
  depthLoop(now);
  schoolLoop(now);
  towerLoop(now);
  workshopLoop(now);
}
