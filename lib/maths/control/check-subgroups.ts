import { requireAtLeast, requireFinite, requireWhole } from './guards';

/** Readings taken together, one list a subgroup, in the order made, any one unit. */
export type Subgroups = readonly (readonly number[])[];

/**
 * Refuses an empty list, and subgroups that are not of 2 to 100 finite readings.
 *
 * @throws {MathsInputError} `<caller>/too-few`, `<caller>/not-finite`, `<caller>/not-whole`
 */
export function checkSubgroups(caller: string, subgroups: Subgroups): void {
  requireAtLeast(caller, 'subgroups', subgroups.length, 1);
  subgroups.forEach((group, i) => {
    requireWhole(caller, `size of subgroup ${i}`, group.length, 2, 100);
    requireFinite(caller, `readings in subgroup ${i}`, group);
  });
}
