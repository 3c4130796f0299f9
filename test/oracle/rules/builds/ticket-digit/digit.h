#ifndef DIGIT_H
#define DIGIT_H
void beginDigit();
void showDigit(byte value);
#endif
