/** What circuit/ offers to rules, analysis and documents; everything else in the folder is its own affair. */
export { type Budget, budgetOf, budgetWords, type Draw, USB_AMPS } from './budget';
export { type BandColour, type Banded, type Bands, bandsFor, readBands } from './colour-bands';
export { digitCode, readDigitCode } from './digit-code';
export { type DividerWish, dividedVolts, explainDivider, type SizedDivider, sizeDivider } from './divider';
export { chooseFlybackDiode, FLYBACK_DIODES, type FlybackDiode, type FlybackWish } from './flyback';
export { elementsOfPart, type PartPlace } from './from-primitives';
export { letterCode, readLetterCode, toleranceLetter } from './letter-code';
export { solveNetwork } from './operating-point';
export { type PinDrive, type PinFigures, type PinPlace, pinElements } from './pin-elements';
export { derating, POWER_RATINGS, type PowerWish, sizePowerRating } from './power-rating';
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
export { type PullWish, type SizedPull, sizePull } from './pull';
export { chargeTime, type DelayWish, dischargeTime, sizeDelay } from './rc-time';
export { type RegulatorBudget, type RegulatorWish, regulatorBudget } from './regulator';
export { type Built, buildResistance } from './resistor-pair';
export { type Phase, type RunTimeWish, runTime } from './run-time';
export { type SizedSeries, sizeSeriesResistors } from './series-pair';
export {
  explainSeries,
  quickAmps,
  quickOhms,
  type SeriesRun,
  seriesAmps,
  seriesAmpsOnCurve,
  seriesSum,
} from './series-sum';
export { type SeriesWish, type SizedResistor, type Sizing, sizeSeriesResistor, sizeWith } from './sizing';
export type { Sized, Sum } from './sum';
export {
  type BaseWish,
  type GateWish,
  type SizedDrive,
  sizeBaseResistor,
  sizeGateResistor,
} from './transistor-drive';
export {
  gaugeMillimetres,
  ohmsPerMetre,
  squareMillimetresOf,
  type Thickness,
  type WireDrop,
  type WireWish,
  wireDrop,
} from './wire';
