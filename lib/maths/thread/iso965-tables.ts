/*
 * The tables of ISO 965-1 for grade 6, micrometres, from a pitch of 0.35 mm up. They are the standard: it
 * smoothed what its formulas give, so the table stands where they differ. Other grades follow from
 * grade 6 by steps of the R 40 series (see threadTolerance).
 */

/** One row of `byPitch`. Deviations are those of the crest of the basic profile. */
export type PitchRow = {
  pitchMm: number;
  /** Distance of the external positions e, f, g from the basic size, downwards, um; G is g upwards. */
  eUm: number | undefined;
  fUm: number;
  gUm: number;
  /** Tolerance of the major diameter of external threads, grade 6, um. */
  majorUm: number;
  /** Tolerance of the minor diameter of internal threads, grade 6, um. */
  minorUm: number;
};

/** Deviations and crest tolerances by pitch [iso-965-1] tables 1, 2 and 3. */
export const byPitch: readonly PitchRow[] = `
0.35 .   34 19  85 100
0.4  .   34 19  95 112
0.45 .   35 20 100 125
0.5  50  36 20 106 140
0.6  53  36 21 125 160
0.7  56  38 22 140 180
0.75 56  38 22 140 190
0.8  60  38 24 150 200
1    60  40 26 180 236
1.25 63  42 28 212 265
1.5  67  45 32 236 300
1.75 71  48 34 265 335
2    71  52 38 280 375
2.5  80  58 42 335 450
3    85  63 48 375 500
3.5  90  70 53 425 560
4    95  75 60 475 600
4.5  100 80 63 500 670
5    106 85 71 530 710
5.5  112 90 75 560 750
6    118 95 80 600 800
8    140 118 100 710 1000
`
  .trim()
  .split('\n')
  .map((line) => {
    const [pitchMm, eUm, fUm, gUm, majorUm, minorUm] = line.split(/\s+/).map(Number);
    return {
      pitchMm: pitchMm!,
      eUm: Number.isNaN(eUm) ? undefined : eUm,
      fUm: fUm!,
      gUm: gUm!,
      majorUm: majorUm!,
      minorUm: minorUm!,
    };
  });

/** One cell of `pitchDiameter`: external and internal tolerance, grade 6, um. */
export type PitchDiameterCell = {
  overMm: number;
  upToMm: number;
  pitchMm: number;
  externalUm: number;
  internalUm: number;
};

/** Tolerances of the pitch diameter by range of the major diameter and pitch [iso-965-1] tables 4, 5. */
export const pitchDiameter: readonly PitchDiameterCell[] = `
1.4 2.8 0.35:63:85 0.4:67:90 0.45:71:95
2.8 5.6 0.35:67:90 0.5:75:100 0.6:85:112 0.7:90:118 0.75:90:118 0.8:95:125
5.6 11.2 0.75:100:132 1:112:150 1.25:118:160 1.5:132:180
11.2 22.4 1:118:160 1.25:132:180 1.5:140:190 1.75:150:200 2:160:212 2.5:170:224
22.4 45 1:125:170 1.5:150:200 2:170:224 3:200:265 3.5:212:280 4:224:300 4.5:236:315
45 90 1.5:160:212 2:180:236 3:212:280 4:236:315 5:250:335 5.5:265:355 6:280:375
90 180 2:190:250 3:224:300 4:250:335 6:300:400 8:335:450
180 355 3:250:335 4:280:375 6:315:425 8:355:475
`
  .trim()
  .split('\n')
  .flatMap((line) => {
    const [overMm, upToMm, ...cells] = line.split(' ');
    return cells.map((cell) => {
      const [pitchMm, externalUm, internalUm] = cell.split(':').map(Number);
      return {
        overMm: Number(overMm),
        upToMm: Number(upToMm),
        pitchMm: pitchMm!,
        externalUm: externalUm!,
        internalUm: internalUm!,
      };
    });
  });
