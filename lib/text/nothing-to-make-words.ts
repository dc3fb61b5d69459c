import { listWords } from './list-words';

/** Why a fit has nothing to make, with marks in the place of ids. */
type Facts =
  | { kind: 'no pieces' | 'all made' }
  | { kind: 'measure first'; mark: string }
  | { kind: 'no partner'; marks: readonly string[]; measure: string | null }
  | { kind: 'no size'; marks: readonly string[] };

/** What stands in the place of the target card while a fit has nothing to make: its heading, and why. */
export function nothingToMakeWords(facts: Facts): { title: string; says: string } {
  switch (facts.kind) {
    case 'no pieces':
      return {
        title: 'Nothing to make yet',
        says: 'One of the two parts has no piece that takes part.',
      };
    case 'measure first':
      return {
        title: 'Nothing to make yet',
        says: `Measure ${facts.mark} first: what its partner is made to follows from its size.`,
      };
    case 'no partner': {
      const { marks, measure } = facts;
      return {
        title: measure === null ? 'Nothing left to make' : 'Nothing to make yet',
        says: `No partner is left for ${listWords(marks)}: ${
          measure === null
            ? 'every bore that is measured and made has one, is promised or left out.'
            : `measure ${measure} first.`
        }`,
      };
    }
    case 'no size': {
      const { marks } = facts;
      const verb = marks.length === 1 ? 'has' : 'have';
      return {
        title: 'Nothing left to make',
        says: `${listWords(marks)} ${verb} no size yet, and no piece waits for ${marks.length === 1 ? 'it' : 'them'}.`,
      };
    }
    case 'all made':
      return {
        title: 'Nothing left to make',
        says: 'Every piece of this fit has a size. What has no partner is named with the pairs.',
      };
  }
}
