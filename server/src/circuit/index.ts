/** What circuit/ offers to rules, analysis and documents; everything else in the folder is its own affair. */
export { type BandColour, type Banded, type Bands, bandsFor, readBands } from './colour-bands';
export { letterCode, readLetterCode, toleranceLetter } from './letter-code';
export { solveNetwork } from './operating-point';
export {
  isPreferred,
  nearest,
  next,
  previous,
  SERIES_NAMES,
  type SeriesName,
  series,
  seriesName,
  valuesBetween,
} from './preferred-numbers';
export {
  explainSeries,
  quickAmps,
  quickOhms,
  type SeriesRun,
  seriesAmps,
  seriesAmpsOnCurve,
} from './series-sum';
export { type SeriesWish, type SizedResistor, type Sizing, sizeSeriesResistor, sizeWith } from './sizing';
