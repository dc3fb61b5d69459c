import type { Metadata } from 'next';
import { cookies } from 'next/headers';
import { BenchSheet } from '@/app/ui/bench/bench-sheet';

export const metadata: Metadata = { title: 'Bench' };

type Props = { searchParams: Promise<{ piece?: string | string[]; feature?: string | string[] }> };

export default async function BenchPage({ searchParams }: Props) {
  const { piece, feature } = await searchParams;
  const asked = { pieceId: one(piece), featureId: one(feature) };
  const blind = (await cookies()).get('fw-blind')?.value ?? null;
  return <BenchSheet key={`${asked.pieceId} ${asked.featureId}`} asked={asked} blind={blind} />;
}

function one(value: string | string[] | undefined): string | null {
  return typeof value === 'string' ? value : null;
}
