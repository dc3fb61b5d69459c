import { MathsInputError } from '../check';

/** Two-point diameters of one feature, S stations along it by D directions across it. */
export type TwoPointGrid = {
  /** An internal feature counts by its smallest size, an external one by its largest. */
  side: 'internal' | 'external';
  /** `diametersMm[s][d]`, mm, above zero, or null where nothing has been read yet: S rows of D. */
  diametersMm: readonly (readonly (number | null)[])[];
  /** Distance of each station along the feature, mm, strictly increasing. Length S. */
  positionsMm?: readonly number[];
};

/** What the grid says so far. A list names the places it speaks of; what is not known is left out. */
export type TwoPointForm = {
  minMm: number;
  maxMm: number;
  meanMm: number;
  /** The size that counts for a running fit: smallest of a bore, largest of a shaft, mm. */
  governingMm: number;
  /** Mean diameter at each station with a reading, mm. */
  stationMeans: { station: number; meanMm: number }[];
  /** Largest less smallest at each station read in two or more directions, mm, never negative. */
  ovality: { station: number; amountMm: number; widestDirection?: number }[];
  /** First station less last, in each direction read at both ends, mm. */
  taper: { direction: number; amountMm: number }[];
  /** Mean of `taper`, mm: above zero is wide at the first station. */
  taperOfMeansMm?: number;
  /** Mean of the inner stations less mean of the two ends, mm: above zero barrel, below waist. */
  middleMinusEndsMm?: number;
  /** The inner station standing furthest off the straight line between the ends, mm. */
  bow?: { station: number; amountMm: number };
  /** Least-squares slope of the station means on position, mm per mm. */
  slopeMmPerMm?: number;
  /** Half the included angle of that slope, minutes of arc. */
  halfAngleArcmin?: number;
};

/** Half a picometre, mm: a smaller difference is the rounding of doubles, not metal. */
export const leastDifferenceMm = 5e-10;

/**
 * Ovality, taper, barrel or waist, and the governing size of one feature, from
 * the two-point diameters read so far.
 *
 * ovality = max - min at a station; taper = first - last in a direction;
 * middleMinusEnds = mean(inner) - (first + last) / 2; half angle = atan(slope / 2).
 *
 * Every amount is a difference of diameters, never of radii. Stations are only
 * compared over directions read at all of them, so a half-filled grid never
 * shows ovality as taper; with a full grid that is the difference of the means.
 * `widestDirection` is left out where all directions agree.
 *
 * Limits: two-point readings cannot see an odd number of lobes, and nothing is
 * said here about whether a difference is larger than the doubt of the readings:
 * see formFindings.
 *
 * Cost: O(S x D). Source: [iso-14405-1] for two-point sizes; the differences are by definition.
 *
 * @throws {MathsInputError} `two-point-form/shape`, `two-point-form/diameter`,
 *   `two-point-form/nothing-read`, `two-point-form/positions`
 *
 * @example
 * twoPointForm({ side: 'internal', diametersMm: [[20.010, 20.002], [20.004, 20.000]] });
 * // governingMm 20.000, ovality ~ 0.008 and 0.004, taper ~ 0.006 and 0.002
 */
export function twoPointForm(grid: TwoPointGrid): TwoPointForm {
  requireGrid(grid);
  const { diametersMm: rows, positionsMm } = grid;
  const read = rows.flat().filter((diameter) => diameter !== null);
  const minMm = Math.min(...read);
  const maxMm = Math.max(...read);
  const started = rows.flatMap((row, s) => (row.some((cell) => cell !== null) ? [s] : []));
  const form: TwoPointForm = {
    minMm,
    maxMm,
    meanMm: mean(read),
    governingMm: grid.side === 'internal' ? minMm : maxMm,
    stationMeans: started.map((station) => ({
      station,
      meanMm: mean(rows[station]!.filter((cell) => cell !== null)),
    })),
    ovality: started.flatMap((station) => ovalityOf(rows[station]!, station)),
    taper: taperOf(rows),
  };
  if (form.taper.length > 0) form.taperOfMeansMm = mean(form.taper.map((one) => one.amountMm));
  if (rows.length >= 3 && started.length === rows.length) Object.assign(form, bowOf(grid));
  if (positionsMm !== undefined) Object.assign(form, slopeOf(rows, started, positionsMm));
  return form;
}

function ovalityOf(row: readonly (number | null)[], station: number): TwoPointForm['ovality'] {
  const read = row.filter((cell) => cell !== null);
  if (read.length < 2) return [];
  const widest = Math.max(...read);
  const amountMm = widest - Math.min(...read);
  if (amountMm < leastDifferenceMm) return [{ station, amountMm }];
  return [{ station, amountMm, widestDirection: row.indexOf(widest) }];
}

function taperOf(rows: TwoPointGrid['diametersMm']): TwoPointForm['taper'] {
  if (rows.length < 2) return [];
  const last = rows.at(-1)!;
  return rows[0]!.flatMap((start, direction) => {
    const end = last[direction]!;
    return start === null || end === null ? [] : [{ direction, amountMm: start - end }];
  });
}

function bowOf({ diametersMm: rows, positionsMm }: TwoPointGrid): Partial<TwoPointForm> {
  const means = comparableMeans(
    rows,
    rows.map((_, s) => s),
  );
  if (means.length === 0) return {};
  const along = positionsMm ?? rows.map((_, s) => s);
  const [first, last, length] = [means[0]!, means.at(-1)!, along.at(-1)! - along[0]!];
  const inner = means.slice(1, -1);
  let bow = { station: 1, amountMm: 0 };
  inner.forEach((meanMm, i) => {
    const amountMm = meanMm - first - ((last - first) * (along[i + 1]! - along[0]!)) / length;
    if (Math.abs(amountMm) > Math.abs(bow.amountMm)) bow = { station: i + 1, amountMm };
  });
  return { middleMinusEndsMm: mean(inner) - (first + last) / 2, bow };
}

function slopeOf(
  rows: TwoPointGrid['diametersMm'],
  started: readonly number[],
  positionsMm: readonly number[],
): Partial<TwoPointForm> {
  const means = comparableMeans(rows, started);
  if (means.length < 2) return {};
  const along = started.map((station) => positionsMm[station]!);
  const [middle, size] = [mean(along), mean(means)];
  const over = along.reduce((sum, at) => sum + (at - middle) ** 2, 0);
  const slopeMmPerMm =
    along.reduce((sum, at, i) => sum + (at - middle) * (means[i]! - size), 0) / over;
  return { slopeMmPerMm, halfAngleArcmin: (Math.atan(slopeMmPerMm / 2) * 180 * 60) / Math.PI };
}

/** Means of the named stations over the directions read at all of them; empty if there is none. */
function comparableMeans(rows: TwoPointGrid['diametersMm'], stations: readonly number[]): number[] {
  const common = rows[0]!.flatMap((_, d) =>
    stations.every((s) => rows[s]![d] !== null) ? [d] : [],
  );
  return common.length === 0 ? [] : stations.map((s) => mean(common.map((d) => rows[s]![d]!)));
}

function mean(values: readonly number[]): number {
  const start = values[0]!;
  return start + values.reduce((sum, value) => sum + (value - start), 0) / values.length;
}

function requireGrid({ diametersMm: rows, positionsMm }: TwoPointGrid): void {
  const D = rows[0]?.length ?? 0;
  if (D === 0 || rows.some((row) => row.length !== D)) {
    throw refuse('shape', `rows of equal length, at least one of one, got ${rows.length} rows`);
  }
  rows.forEach((row, s) =>
    row.forEach((cell, d) => {
      if (cell === null || (Number.isFinite(cell) && cell > 0)) return;
      throw refuse('diameter', `diameters above zero, got ${cell} at station ${s}, direction ${d}`);
    }),
  );
  if (!rows.some((row) => row.some((cell) => cell !== null))) {
    throw refuse('nothing-read', 'at least one reading, got none');
  }
  if (positionsMm === undefined) return;
  const S = rows.length;
  if (positionsMm.length !== S) {
    throw refuse('positions', `a position for each of ${S} stations, got ${positionsMm.length}`);
  }
  positionsMm.forEach((at, s) => {
    if (Number.isFinite(at) && (s === 0 || at > positionsMm[s - 1]!)) return;
    throw refuse('positions', `increasing positions, got ${at} mm at station ${s}`);
  });
}

function refuse(reason: string, what: string): MathsInputError {
  return new MathsInputError(`two-point-form/${reason}`, `twoPointForm requires ${what}`);
}
