import type { Metadata } from 'next';
import { RunsSheet } from '@/app/ui/runs/runs-sheet';

export const metadata: Metadata = { title: 'Runs' };

type Props = { searchParams: Promise<{ run?: string | string[] }> };

export default async function RunsPage({ searchParams }: Props) {
  const { run } = await searchParams;
  return <RunsSheet asked={typeof run === 'string' ? run : null} />;
}
