import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { chosenHere } from '@/app/chosen';
import { JobProvider } from '@/app/ui/job/job-provider';
import { jobSheet } from '@/lib/store/job-sheet';

type Props = { params: Promise<{ job: string }>; children: ReactNode };

/** Loads a job once for all its sheets; from then on the live feed keeps it true. */
export default async function JobLayout({ params, children }: Props) {
  const sheet = await jobSheet((await params).job);
  if (sheet === null) notFound();
  const { unit, decimal, hand, personId } = await chosenHere();
  const chosen = { unit: unit ?? sheet.job.unit, decimal, hand, personId };
  return (
    <JobProvider sheet={sheet} chosen={chosen}>
      {children}
    </JobProvider>
  );
}
