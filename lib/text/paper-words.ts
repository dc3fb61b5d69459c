type Side = { title: string; feature: string };

/** The heads of the printed table of pairs; parts in the singular. */
export function paperHeadings(internal: Side, external: Side): string[] {
  return [
    'Set',
    one(internal.title),
    capital(internal.feature),
    one(external.title),
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

/** The remark beside a piece that is still to make: the place for its size is left empty. */
export function paperMakeWords(mark: string, size: string): string {
  return `make ${mark} to ${size}`;
}

export const paperCareWords =
  'Sizes and estimates for making and fitting. No permission to run hot or under pressure is given or meant; local rules and licensed persons decide that.';

const one = (title: string) => title.replace(/s$/, '');
const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);
