import { redirect } from 'next/navigation';

/** A job opens on its board. */
export default async function JobPage({ params }: { params: Promise<{ job: string }> }) {
  redirect(`/jobs/${(await params).job}/board`);
}
