/** A rule of practice: clearance = constant + slope x diameter. Interference is below zero. */
export type PracticeRule = {
  /** Of a starter a word, of the shop's own its id. */
  key: string;
  name: string;
  note: string;
  fixedPm: number;
  minNmPerMm: number;
  aimNmPerMm: number;
  maxNmPerMm: number;
};

const thouPm = 25_400_000;

const rule = (
  key: string,
  name: string,
  note: string,
  fixedThou: number,
  [minNmPerMm, aimNmPerMm, maxNmPerMm]: readonly [number, number, number],
): PracticeRule => ({
  key,
  name,
  note,
  fixedPm: Math.round(fixedThou * thouPm),
  minNmPerMm,
  aimNmPerMm,
  maxNmPerMm,
});

/**
 * Rules to start from. Every one is common practice, to be overruled by the person who makes the fit.
 *
 * Constants and middle slopes are those of a handbook of the model engineers (Tubal Cain), known only as
 * quoted by others; "a thou an inch" is a saying of the trade with no source. How far the least and the
 * most lie from the middle is this notebook's own choice.
 */
export const starterRules: readonly PracticeRule[] = [
  rule('thou', 'A thou an inch', 'plain bearing, oiled', 0, [500, 1000, 1500]),
  rule(
    'easy running',
    'Easy running',
    'loose, dirt about, or long bearings',
    1.5,
    [1750, 2250, 2750],
  ),
  rule('running', 'Running', 'turns freely with oil', 1, [1100, 1500, 1900]),
  rule('close running', 'Close running', 'turns, little shake', 0.6, [600, 800, 1000]),
  rule('sliding', 'Sliding', 'slides by hand, no shake', 0.3, [250, 450, 650]),
  rule('push', 'Push', 'goes in by hand with a push', 0.15, [150, 350, 550]),
  rule('drive', 'Drive', 'goes in with a soft hammer', -0.3, [-650, -450, -250]),
  rule('press', 'Press', 'goes in under a press', -0.5, [-1000, -750, -500]),
  rule('shrink', 'Shrink', 'outer heated or inner chilled', -0.5, [-1750, -1500, -1250]),
];
