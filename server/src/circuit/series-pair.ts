/**
 * The series resistor of a lamp where the drawer's values lie too far apart: two of them in series or in parallel, safe
 * at the worst corner of all tolerances and each within its power.
 */
import type { Range } from '../base/range';
import { type Built, explainBuilt, makePair, powerShares, usableValues } from './resistor-pair';
import { seriesSum } from './series-sum';
import { type SeriesWish, sizeSeriesResistor, sizeWith } from './sizing';
import { refused, type Sized, type Sum } from './sum';

export interface SizedSeries extends Built {
  /** Amperes at the corners. */
  readonly amps: Range;
  /** Watts in each resistor at the worst corner, in the order of `values`. */
  readonly watts: readonly number[];
  readonly sum: Sum;
}

/** A single resistor that comes this near to the wanted current is taken; more joints would gain nothing to the eye. */
const NEAR = 0.2;
/** Values of the drawer that pairs are made of: those within this factor of the resistance in question. */
const REACH = 30;

/** One resistor where one does, else the best two. */
export function sizeSeriesResistors(wish: SeriesWish): Sized<SizedSeries> {
  const single = sizeSeriesResistor(wish);
  const wanted = wish.wantedAmps ?? wish.limitAmps;
  const distance = (amps: Range): number => Math.abs(amps.typ - wanted) / wanted;
  if (single.ok && (wish.wantedAmps === undefined || distance(single.amps) <= NEAR)) {
    return { ok: true, ...finished(wish, { ohms: single.ohms, join: 'single', values: [single.ohms] }) };
  }
  let best = single.ok
    ? finished(wish, { ohms: single.ohms, join: 'single', values: [single.ohms] })
    : undefined;
  for (const pair of pairsAround(wish, wanted)) {
    const sized = finished(wish, pair);
    const safe = sized.amps.max <= wish.limitAmps;
    const cool = sized.watts.every((watts) => wish.watts === undefined || watts <= wish.watts);
    if (safe && cool && (best === undefined || distance(sized.amps) < distance(best.amps))) {
      best = sized;
    }
  }
  return best === undefined ? refused(single.ok ? 'nothing fits' : single.why) : { ok: true, ...best };
}

function* pairsAround(wish: SeriesWish, wanted: number): Generator<Built> {
  const about = (wish.supply.typ - wish.forward.typ) / wanted - wish.sourceOhms.typ;
  if (!(about > 0 && Number.isFinite(about))) {
    return;
  }
  const values = usableValues(wish.stock).filter((ohms) => ohms < about * REACH && ohms > about / REACH);
  for (const [index, a] of values.entries()) {
    for (const b of values.slice(index)) {
      yield makePair(a, b, 'series');
      yield makePair(a, b, 'parallel');
    }
  }
}

/** Both resistors have the tolerance of the stock, so the pair has it too. */
function finished(wish: SeriesWish, built: Built): SizedSeries & { readonly sums: readonly Sum[] } {
  const { amps, watts } = sizeWith(wish, built.ohms);
  const sum = seriesSum({
    supply: wish.supply.typ,
    forward: wish.forward.typ,
    ohms: built.ohms,
    sourceOhms: wish.sourceOhms.typ,
  });
  const shares = powerShares(built).map((share) => watts * share);
  const sums = built.join === 'single' ? [sum] : [explainBuilt(built), sum];
  return { ...built, amps, watts: shares, sum, sums };
}
