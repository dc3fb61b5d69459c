type Side = { title: string; feature: string };

/** The heads of the printed table of pairs. */
export function paperHeadings(internal: Side, external: Side): string[] {
  return [
    'Set',
    internal.title,
    capital(internal.feature),
    external.title,
    capital(external.feature),
    'Clear',
    'Verdict',
    'Likely inside',
    'Remark',
  ];
}

/** In place of a table of clearances that no sheet of paper would hold. */
export function matrixNotPrintedWords(rows: number, columns: number): string {
  return `Clearance of every pair: ${rows} by ${columns}, too many for paper; the screen has them.`;
}

/** What is said of a pair under the table: "P1 in L1: …". */
export function paperPairWords(
  { internal, external }: { internal: string; external: string },
  says: string,
): string {
  return `${external} in ${internal}: ${says}`;
}

/** Over those lines. */
export const paperNoteTitles = { flagged: 'Changed since it was final', undone: 'Undone' };

/** The remark beside a piece that is still to make: the place for its size is left empty. */
export function paperMakeWords(mark: string, size: string): string {
  return `make ${mark} to ${size}`;
}

export const paperCareWords =
  'Sizes and estimates for making and fitting. No permission to run hot or under pressure is given or meant; local rules and licensed persons decide that.';

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);
