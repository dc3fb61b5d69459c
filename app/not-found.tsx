import Link from 'next/link';

export default function NotFound() {
  return (
    <main>
      <p className="t-section">There is no such sheet in this notebook.</p>
      <p className="t-sentence">
        It may have been struck out, or the address may be mistyped. <Link href="/">Jobs</Link>
      </p>
    </main>
  );
}
