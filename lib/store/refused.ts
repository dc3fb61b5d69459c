/** What the store will not keep, and why, in words a developer and the texts of the screens can use. */
export type Refused = { state: 'refused'; code: RefusalCode; at: string; says: string };

/** Every reason the store refuses something for. A code is never given another meaning. */
export const refusals = {
  'other-content': 'This id is in the book already, with another content',
  'id-twice': 'The same id stands twice in this request',
  'no-such-job': 'There is no job with this id',
  'no-such-part': 'There is no part with this id in this job',
  'no-such-piece': 'There is no piece with this id in this job',
  'no-such-feature': 'There is no feature with this id in this job',
  'no-such-fit': 'There is no fit with this id in this job',
  'no-such-run': 'There is no run with this id in this job',
  'no-such-cut': 'There is no cut with this id',
  'no-such-event': 'There is no event of a run with this id',
  'no-such-picture': 'There is no picture with this id in this job',
  'no-such-person': 'There is no person with this id',
  'no-such-gauge': 'There is no gauge with this id',
  'piece-of-another-part': 'This piece is not of the part that has the feature',
  'not-internal': 'The internal feature of a fit is a bore or a slot',
  'not-external': 'The external feature of a fit is an outside or a width',
  'limits-crossed': 'The lower limit is above the upper one',
  'aim-outside': 'The aim is not between the smallest and the largest clearance',
  'comma-twice': 'A comma cannot end a message and be its decimal mark',
  'ordinal-taken': 'Another one has this place in the order',
  'mark-taken': 'Another piece of this part has this mark',
  'number-taken': 'Another departure of this job has this number',
  'piece-taken': 'One of the two pieces belongs to another pair of this fit',
  'pair-mark-taken': 'Another final pair of this fit carries this mark',
  'final-pairs': 'Final pairs stand on it; they are undone first, each with its reason',
  'not-a-picture': 'This is not a PNG or a JPEG picture',
  'picture-too-large': 'The picture is larger than the notebook takes',
  'too-many-pieces': 'One job takes at most 5000 pieces to begin with',
  'wrong-shape': 'This is not the shape of an entry',
  'device-seq-taken': 'Another entry of this device has this running number',
} as const;
export type RefusalCode = keyof typeof refusals;

/** @example refused('no-such-job', 'jobId') */
export function refused(code: RefusalCode, at: string, says: string = refusals[code]): Refused {
  return { state: 'refused', code, at, says };
}
