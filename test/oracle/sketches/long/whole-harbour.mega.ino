/***********************************************************************
 * The whole harbour on one big board, as it stood at the exhibition.
 * Every building has a block of its own: names, setup, loop.
 **********************************************************************/

// ---------------------------------------------------------------------------
// North mole: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define NORTH_MOLE_LAMP 2
#define NORTH_MOLE_FLASH 22
#define NORTH_MOLE_STEP 9

int northMoleLevel = 0;
int northMoleChange = NORTH_MOLE_STEP;
unsigned long northMoleAt = 0;

void northMoleSetup()
{
  pinMode(NORTH_MOLE_LAMP, OUTPUT);
  pinMode(NORTH_MOLE_FLASH, OUTPUT);
}

void northMoleLoop(unsigned long now)
{
  if (now - northMoleAt < 4)
  {
    return;
  }
  northMoleAt = now;
  northMoleLevel += northMoleChange;
  if (northMoleLevel > 255)
  {
    northMoleLevel = 255;
    northMoleChange = -NORTH_MOLE_STEP;
    digitalWrite(NORTH_MOLE_FLASH, HIGH);
  }
  if (northMoleLevel < 0)
  {
    northMoleLevel = 0;
    northMoleChange = NORTH_MOLE_STEP;
    digitalWrite(NORTH_MOLE_FLASH, LOW);
  }
  analogWrite(NORTH_MOLE_LAMP, northMoleLevel);
}

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

/* Dry dock: two floats, one pump, one alarm lamp. The pump runs until the lower float falls. */
const uint8_t dryDockLow = 24, dryDockHigh = 25;
const uint8_t dryDockMotor = 26;
const uint8_t dryDockAlarm = 27;
static bool dryDockRunning = false;
static unsigned long dryDockSince;

static void dryDockMotorTo(bool on) {
  if (on != dryDockRunning) {
    dryDockSince = millis();
    dryDockRunning = on;
  }
  digitalWrite(dryDockMotor, on ? HIGH : LOW);
}

void dryDockSetup() {
  pinMode(dryDockLow, INPUT_PULLUP);
  pinMode(dryDockHigh, INPUT_PULLUP);
  pinMode(dryDockMotor, OUTPUT);
  pinMode(dryDockAlarm, OUTPUT);
  dryDockMotorTo(false);
}

void dryDockLoop(unsigned long now) {
  const bool low = digitalRead(dryDockLow) == LOW;
  const bool high = digitalRead(dryDockHigh) == LOW;
  if (high) {
    dryDockMotorTo(true);
  } else if (!low) {
    dryDockMotorTo(false);
  }
  // A pump that runs too long has lost its water.
  const bool tooLong = dryDockRunning && now - dryDockSince > 120;
  digitalWrite(dryDockAlarm, tooLong);
  if (tooLong) {
    dryDockMotorTo(false);
  }
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

// Promenade ------------------------------------------------------------------
int promenadePins[] = { 36, 37, 38, 39 };
#define PROMENADE_COUNT (sizeof(promenadePins) / sizeof(promenadePins[0]))
byte promenadeAt = 0;
boolean promenadeBack = false;
unsigned long promenadeTime = 0;
int promenadePause = 11;

void promenadeSetup() {
	for (unsigned int i = 0; i < PROMENADE_COUNT; i++) {
		pinMode(promenadePins[i], OUTPUT);
		digitalWrite(promenadePins[i], LOW);
	}
}

void promenadeLoop(unsigned long now) {
	if (now - promenadeTime < (unsigned long)promenadePause) return;
	promenadeTime = now;
	digitalWrite(promenadePins[promenadeAt], LOW);
	if (promenadeBack) {
		if (promenadeAt == 0) { promenadeBack = false; promenadeAt++; }
		else promenadeAt--;
	} else {
		if (promenadeAt == PROMENADE_COUNT - 1) { promenadeBack = true; promenadeAt--; }
		else promenadeAt++;
	}
	digitalWrite(promenadePins[promenadeAt], HIGH);
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

// Garage: a sliding door with two end switches and a light curtain
class GarageDoor {
  public:
    enum State : uint8_t { Shut, Opening, Open, Shutting };

    GarageDoor(uint8_t open, uint8_t shut, uint8_t curtain)
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

GarageDoor garageDoor(43, 47, 48);

void garageSetup() { garageDoor.begin(); }
void garageLoop(unsigned long now) { garageDoor.update(now); }

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

// ===== Pressure =====
// pointer instrument on a PWM pin, knob on an analog one, smoothing over eight readings
#define PRESSURE_KNOB   A1
#define PRESSURE_NEEDLE 5
#define PRESSURE_OVER   A9
#define PRESSURE_N      8
int pressure_values[PRESSURE_N];
byte pressure_next = 0;
long pressure_sum = 0;
void pressureSetup() {
  pinMode(PRESSURE_NEEDLE, OUTPUT);
  pinMode(PRESSURE_OVER, OUTPUT);
  for (byte i = 0; i < PRESSURE_N; i++) pressure_values[i] = 0;
}
int pressure_smooth(int fresh) {
  pressure_sum -= pressure_values[pressure_next];
  pressure_values[pressure_next] = fresh;
  pressure_sum += fresh;
  pressure_next = (pressure_next + 1) % PRESSURE_N;
  return pressure_sum / PRESSURE_N;
}
void pressureLoop(unsigned long now) {
  int value = pressure_smooth(analogRead(PRESSURE_KNOB));
  int needle = map(value, 0, 1023, 0, 255);
  needle = constrain(needle, 0, 250);
  analogWrite(PRESSURE_NEEDLE, needle);
  if (value > 900 && (now / 8) % 2) digitalWrite(PRESSURE_OVER, HIGH);
  else digitalWrite(PRESSURE_OVER, LOW);
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

/// Foundry
/// speeds: off, low, middle, high, by one key that steps on
uint8_t foundry_fan = 7;
uint8_t foundry_key = A4;
uint8_t foundry_speeds[4] = {0, 90, 160, 255};
uint8_t foundry_speed;
uint8_t foundry_seen;

void foundrySetup()
{
	pinMode(foundry_fan, OUTPUT);
	pinMode(foundry_key, INPUT_PULLUP);
}

void foundryLoop(unsigned long now)
{
	(void)now;
	uint8_t key = digitalRead(foundry_key);
	if (foundry_seen && !key)
		foundry_speed = (foundry_speed + 1) & 3;
	foundry_seen = key;
	analogWrite(foundry_fan, foundry_speeds[foundry_speed]);
}

// ---------------------------------------------------------------------------
// Mast: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define MAST_LAMP 8
#define MAST_FLASH A14
#define MAST_STEP 9

int mastLevel = 0;
int mastChange = MAST_STEP;
unsigned long mastAt = 0;

void mastSetup()
{
  pinMode(MAST_LAMP, OUTPUT);
  pinMode(MAST_FLASH, OUTPUT);
}

void mastLoop(unsigned long now)
{
  if (now - mastAt < 4)
  {
    return;
  }
  mastAt = now;
  mastLevel += mastChange;
  if (mastLevel > 255)
  {
    mastLevel = 255;
    mastChange = -MAST_STEP;
    digitalWrite(MAST_FLASH, HIGH);
  }
  if (mastLevel < 0)
  {
    mastLevel = 0;
    mastChange = MAST_STEP;
    digitalWrite(MAST_FLASH, LOW);
  }
  analogWrite(MAST_LAMP, mastLevel);
}

// Fair, an electric die with three pairs of lamps and one in the middle
struct FairDie
{
    byte middle, pairA, pairB, key;
    byte value;
};
FairDie fairDie = { 17, 18, 19, 20, 1 };

void fairShow()
{
    const byte value = fairDie.value;
    digitalWrite(fairDie.middle, value % 2 == 1 ? HIGH : LOW);
    digitalWrite(fairDie.pairA,  value > 1      ? HIGH : LOW);
    digitalWrite(fairDie.pairB,  value > 3      ? HIGH : LOW);
}

void fairSetup()
{
    pinMode(fairDie.middle, OUTPUT);
    pinMode(fairDie.pairA,  OUTPUT);
    pinMode(fairDie.pairB,  OUTPUT);
    pinMode(fairDie.key,    INPUT_PULLUP);
    fairShow();
}

void fairLoop(unsigned long)
{
    if (digitalRead(fairDie.key) == LOW)
    {
        fairDie.value++;
        if (fairDie.value > 6) fairDie.value = 1;
        fairShow();
    }
}

/// Bakery
/// speeds: off, low, middle, high, by one key that steps on
uint8_t bakery_fan = 9;
uint8_t bakery_key = A5;
uint8_t bakery_speeds[4] = {0, 90, 160, 255};
uint8_t bakery_speed;
uint8_t bakery_seen;

void bakerySetup()
{
	pinMode(bakery_fan, OUTPUT);
	pinMode(bakery_key, INPUT_PULLUP);
}

void bakeryLoop(unsigned long now)
{
	(void)now;
	uint8_t key = digitalRead(bakery_key);
	if (bakery_seen && !key)
		bakery_speed = (bakery_speed + 1) & 3;
	bakery_seen = key;
	analogWrite(bakery_fan, bakery_speeds[bakery_speed]);
}

// ---------------------------------------------------------------------------
// Buoy: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define BUOY_LAMP 10
#define BUOY_FLASH A15
#define BUOY_STEP 9

int buoyLevel = 0;
int buoyChange = BUOY_STEP;
unsigned long buoyAt = 0;

void buoySetup()
{
  pinMode(BUOY_LAMP, OUTPUT);
  pinMode(BUOY_FLASH, OUTPUT);
}

void buoyLoop(unsigned long now)
{
  if (now - buoyAt < 4)
  {
    return;
  }
  buoyAt = now;
  buoyLevel += buoyChange;
  if (buoyLevel > 255)
  {
    buoyLevel = 255;
    buoyChange = -BUOY_STEP;
    digitalWrite(BUOY_FLASH, HIGH);
  }
  if (buoyLevel < 0)
  {
    buoyLevel = 0;
    buoyChange = BUOY_STEP;
    digitalWrite(BUOY_FLASH, LOW);
  }
  analogWrite(BUOY_LAMP, buoyLevel);
}

// ===== Furnace =====
// pointer instrument on a PWM pin, knob on an analog one, smoothing over eight readings
#define FURNACE_KNOB   A6
#define FURNACE_NEEDLE 44
#define FURNACE_OVER   21
#define FURNACE_N      8
int furnace_values[FURNACE_N];
byte furnace_next = 0;
long furnace_sum = 0;
void furnaceSetup() {
  pinMode(FURNACE_NEEDLE, OUTPUT);
  pinMode(FURNACE_OVER, OUTPUT);
  for (byte i = 0; i < FURNACE_N; i++) furnace_values[i] = 0;
}
int furnace_smooth(int fresh) {
  furnace_sum -= furnace_values[furnace_next];
  furnace_values[furnace_next] = fresh;
  furnace_sum += fresh;
  furnace_next = (furnace_next + 1) % FURNACE_N;
  return furnace_sum / FURNACE_N;
}
void furnaceLoop(unsigned long now) {
  int value = furnace_smooth(analogRead(FURNACE_KNOB));
  int needle = map(value, 0, 1023, 0, 255);
  needle = constrain(needle, 0, 250);
  analogWrite(FURNACE_NEEDLE, needle);
  if (value > 900 && (now / 8) % 2) digitalWrite(FURNACE_OVER, HIGH);
  else digitalWrite(FURNACE_OVER, LOW);
}

/// Stable
/// speeds: off, low, middle, high, by one key that steps on
uint8_t stable_fan = 45;
uint8_t stable_key = A7;
uint8_t stable_speeds[4] = {0, 90, 160, 255};
uint8_t stable_speed;
uint8_t stable_seen;

void stableSetup()
{
	pinMode(stable_fan, OUTPUT);
	pinMode(stable_key, INPUT_PULLUP);
}

void stableLoop(unsigned long now)
{
	(void)now;
	uint8_t key = digitalRead(stable_key);
	if (stable_seen && !key)
		stable_speed = (stable_speed + 1) & 3;
	stable_seen = key;
	analogWrite(stable_fan, stable_speeds[stable_speed]);
}

// ---------------------------------------------------------------------------
// Chimney: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define CHIMNEY_LAMP 46
#define CHIMNEY_FLASH 13
#define CHIMNEY_STEP 9

int chimneyLevel = 0;
int chimneyChange = CHIMNEY_STEP;
unsigned long chimneyAt = 0;

void chimneySetup()
{
  pinMode(CHIMNEY_LAMP, OUTPUT);
  pinMode(CHIMNEY_FLASH, OUTPUT);
}

void chimneyLoop(unsigned long now)
{
  if (now - chimneyAt < 4)
  {
    return;
  }
  chimneyAt = now;
  chimneyLevel += chimneyChange;
  if (chimneyLevel > 255)
  {
    chimneyLevel = 255;
    chimneyChange = -CHIMNEY_STEP;
    digitalWrite(CHIMNEY_FLASH, HIGH);
  }
  if (chimneyLevel < 0)
  {
    chimneyLevel = 0;
    chimneyChange = CHIMNEY_STEP;
    digitalWrite(CHIMNEY_FLASH, LOW);
  }
  analogWrite(CHIMNEY_LAMP, chimneyLevel);
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
  northMoleSetup();
  southMoleSetup();
  dryDockSetup();
  fountainSetup();
  runwaySetup();
  promenadeSetup();
  shedSetup();
  garageSetup();
  casinoSetup();
  ferrySetup();
  depthSetup();
  pressureSetup();
  schoolSetup();
  towerSetup();
  workshopSetup();
  foundrySetup();
  mastSetup();
  fairSetup();
  bakerySetup();
  buoySetup();
  furnaceSetup();
  stableSetup();
  chimneySetup();
}

void loop() {
  unsigned long now = millis();
  northMoleLoop(now);
  southMoleLoop(now);
  dryDockLoop(now);
  fountainLoop(now);
  runwayLoop(now);
  promenadeLoop(now);
  shedLoop(now);
  garageLoop(now);
  casinoLoop(now);
  ferryLoop(now);
  depthLoop(now);
  pressureLoop(now);
  schoolLoop(now);
  towerLoop(now);
  workshopLoop(now);
  foundryLoop(now);
  mastLoop(now);
  fairLoop(now);
  bakeryLoop(now);
  buoyLoop(now);
  furnaceLoop(now);
  stableLoop(now);
  chimneyLoop(now);
  report(now);
}
