import { checkSubgroups, type Subgroups } from './check-subgroups';
import { refuse } from './guards';

/**
 * The one size of all subgroups; refuses sizes that differ.
 *
 * @throws {MathsInputError} `<caller>/too-few`, `<caller>/uneven`, `<caller>/not-finite`,
 *   `<caller>/not-whole`
 */
export function evenSubgroups(caller: string, subgroups: Subgroups): number {
  checkSubgroups(caller, subgroups);
  const size = subgroups[0]!.length;
  const other = subgroups.findIndex((group) => group.length !== size);
  if (other >= 0) {
    const got = `${subgroups[other]!.length} at subgroup ${other}`;
    throw refuse(caller, 'uneven', `subgroups of one size ${size}, got ${got}`);
  }
  return size;
}
