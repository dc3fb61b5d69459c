import type { Metadata } from 'next';
import { cookies } from 'next/headers';
import { BenchOrCut } from '@/app/ui/cut/bench-or-cut';

export const metadata: Metadata = { title: 'Bench' };

type Props = { searchParams: Promise<{ piece?: string | string[]; feature?: string | string[] }> };

export default async function BenchPage({ searchParams }: Props) {
  const { piece, feature } = await searchParams;
  const blind = (await cookies()).get('fw-blind')?.value ?? null;
  return <BenchOrCut key={`${one(piece)} ${one(feature)}`} blind={blind} />;
}

function one(value: string | string[] | undefined): string | null {
  return typeof value === 'string' ? value : null;
}
