/* Greenhouse of the school: four beds, each a valve, a moisture probe fed only while measuring. */
#include <EEPROM.h>
#define BEDS 4
#define DRY_DEFAULT 400

typedef struct {
	uint8_t valve;
	uint8_t feed;
	uint8_t probe;
	uint16_t dry;
} bed_t;

static bed_t beds[BEDS] = {
	{ .valve = 22, .feed = 23, .probe = A0, .dry = DRY_DEFAULT },
	{ .valve = 24, .feed = 25, .probe = A1, .dry = DRY_DEFAULT },
	{ .valve = 26, .feed = 27, .probe = A2, .dry = DRY_DEFAULT },
	{ .valve = 28, .feed = 29, .probe = A3, .dry = DRY_DEFAULT },
};
static const uint8_t tank_low = 40, alarm_lamp = 13;

static uint16_t measure(const bed_t *bed) {
	digitalWrite(bed->feed, HIGH);
	delay(2);
	uint16_t v = analogRead(bed->probe);
	digitalWrite(bed->feed, LOW);
	return v;
}

void setup() {
	for (uint8_t i = 0; i < BEDS; i++) {
		pinMode(beds[i].valve, OUTPUT);
		pinMode(beds[i].feed, OUTPUT);
		uint16_t kept;
		EEPROM.get(i * 2, kept);
		if (kept < 1024) beds[i].dry = kept;
	}
	pinMode(tank_low, INPUT_PULLUP);
	pinMode(alarm_lamp, OUTPUT);
}

void loop() {
	bool empty = digitalRead(tank_low) == LOW;
	digitalWrite(alarm_lamp, empty);
	for (uint8_t i = 0; i < BEDS; i++) {
		const bed_t *bed = &beds[i];
		digitalWrite(bed->valve, !empty && measure(bed) < bed->dry);
	}
	delay(20);
}
