import type { Metadata } from 'next';
import { BenchSheet } from '@/app/ui/bench/bench-sheet';

export const metadata: Metadata = { title: 'Bench' };

type Props = { searchParams: Promise<{ piece?: string | string[]; feature?: string | string[] }> };

export default async function BenchPage({ searchParams }: Props) {
  const { piece, feature } = await searchParams;
  const asked = { pieceId: one(piece), featureId: one(feature) };
  return <BenchSheet key={`${asked.pieceId} ${asked.featureId}`} asked={asked} />;
}

function one(value: string | string[] | undefined): string | null {
  return typeof value === 'string' ? value : null;
}
