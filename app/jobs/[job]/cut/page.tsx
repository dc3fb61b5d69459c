import type { Metadata } from 'next';
import { cookies } from 'next/headers';
import { BenchOrCut } from '@/app/ui/cut/bench-or-cut';

export const metadata: Metadata = { title: 'Cut' };

export default async function CutPage() {
  const blind = (await cookies()).get('fw-blind')?.value ?? null;
  return <BenchOrCut blind={blind} />;
}
