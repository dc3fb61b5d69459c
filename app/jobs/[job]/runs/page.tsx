import type { Metadata } from 'next';
import { RunsSheet } from '@/app/ui/runs/runs-sheet';

export const metadata: Metadata = { title: 'Runs' };

export default function RunsPage() {
  return <RunsSheet />;
}
