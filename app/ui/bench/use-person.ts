'use client';

import { useJob } from '../job/job-provider';

export type Person = {
  id: string | null;
  name: string | null;
  people: readonly { id: string; name: string }[];
  choose: (id: string | null) => void;
  trouble: string | null;
};

/** Who measures on this device, and who else could. */
export function usePerson(): Person {
  const { view, person } = useJob();
  const people = view.sheet.people.filter(({ struckAt }) => struckAt === null);
  const { personId: id, choose, trouble } = person;
  return { id, name: people.find((one) => one.id === id)?.name ?? null, people, choose, trouble };
}
