/** Where a potentiometer is looked at: its two end stops and the middle, by the words that name a state. */

/** Share of the track between the first end and the wiper. The ends keep a thousandth of the track. */
export const wiperPlaces: Readonly<Record<string, number>> = {
  'turned to its first end': 0.001,
  'in the middle': 0.5,
  'turned to its second end': 0.999,
};
