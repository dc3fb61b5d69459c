import type { Metadata } from 'next';
import { BenchOrCut } from '@/app/ui/cut/bench-or-cut';

export const metadata: Metadata = { title: 'Cut' };

export default function CutPage() {
  return <BenchOrCut />;
}
