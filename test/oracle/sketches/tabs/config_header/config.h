// what this build has
#define WITH_WHISTLE 1
#define WHISTLE_HZ 1500
