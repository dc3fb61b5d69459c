import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { chosenHere } from '@/app/chosen';
import { CloserSheet } from '@/app/ui/closer/closer-sheet';
import { Id } from '@/lib/schema/common';
import { runHead } from '@/lib/store/run-series';

export const metadata: Metadata = { title: 'Run, closer' };

type Props = { params: Promise<{ run: string }> };

/** One run looked at closely, of any length: it loads its own columns and nothing else of the job. */
export default async function CloserPage({ params }: Props) {
  const id = Id.safeParse((await params).run);
  const head = id.success ? await runHead(id.data) : null;
  if (head === null) notFound();
  const { unit, decimal } = await chosenHere();
  return <CloserSheet head={head} shown={{ unit: unit ?? head.job.unit, decimal }} />;
}
