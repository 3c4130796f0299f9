/** The part of the measurement that run.mjs bundles and calls. */
export { runMeasurement } from './report';
