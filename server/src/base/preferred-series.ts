/**
 * The values of the preferred number series. It lies in base because a stock given as "E12" is read in hardware/ and
 * sizing picks from series in circuit/.
 * Source: IEC 60063 (2015), from memory: E3 to E24 are a table; E48 to E192 are 10^(n/N) rounded to three digits, but
 * for 9.20 in E192.
 */

/** Names of the series; the number counts the values in a decade. */
export const preferredSeries = ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'] as const;
export type PreferredSeries = (typeof preferredSeries)[number];

const e24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

/** One decade in hundredths, ascending from 100, so that the figures are whole. */
export function decadeHundredths(series: PreferredSeries): number[] {
  const count = Number(series.slice(1));
  if (count <= 24) {
    return e24.filter((_, index) => index % (24 / count) === 0).map((value) => value * 10);
  }
  return Array.from({ length: count }, (_, index) => {
    const rounded = Math.round(100 * 10 ** (index / count));
    return rounded === 919 ? 920 : rounded;
  });
}

/** All values of a series from 10^`lowest` up to and with 10^`highest`, ascending. */
export function preferredValues(series: PreferredSeries, lowest: number, highest: number): number[] {
  const values: number[] = [];
  for (let power = lowest; power < highest; power++) {
    // Through text, so that 4700 is 4700 to the last bit.
    for (const hundredths of decadeHundredths(series)) values.push(Number(`${hundredths}e${power - 2}`));
  }
  values.push(Number(`1e${highest}`));
  return values;
}
