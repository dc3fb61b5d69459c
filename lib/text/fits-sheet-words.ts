/** Where a job has no fit yet. */
export const noFitsWords = 'No fits yet. Say which bore runs on which shaft, and how freely.';

/** How the two rules are read. */
export const plumbWords = 'A plumb line is a pair at the aim; dashed is still to make.';

/** A fit cannot be said: one of its two kinds of feature is missing. */
export const noSidesWords =
  'A fit ties a bore or slot to an outside or width. Add both features to the job first.';

/** The two features that were chosen are on one part. */
export const onePartWords = 'A fit ties two parts; these are on one.';

/** Under the table of clearances, before anything of it was chosen. */
export const choosePairWords =
  'Choose a pair to see how sure it is, to lock it or to keep it apart; the head of a row or column to leave a piece out.';

/** After what a final pair is, where it was chosen in the table. */
export const undoInListWords = 'Undo it in the list of pairs to part it.';

/** A final pair is undone only with a reason. */
export const whyUndoneWords = 'Say why: the record keeps it.';

/** Measured pieces that suit nobody: after their marks, which are set apart. */
export function noFreePartnerWords(count: number): string {
  return `${count === 1 ? 'suits' : 'suit'} no free partner.`;
}

/** What keeps a fit from telling shapes; nothing of it is measured. */
export const noShapesWords = 'Nothing is measured yet.';

/** Looking at the shapes of very many pieces is asked for. */
export function lookAtShapesWords(count: number): string {
  return `Look at the shapes of ${count} pieces`;
}
