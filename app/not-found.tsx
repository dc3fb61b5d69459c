import { PlainPage } from './ui/primitives/plain-page';

export default function NotFound() {
  return (
    <PlainPage title="There is no such sheet in this notebook.">
      <p className="t-sentence">
        It may have been struck out, or the address may be mistyped.{' '}
        {/* oxlint-disable-next-line nextjs/no-html-link-for-pages -- every sheet would load the script of a link for it */}
        <a href="/">Jobs</a>
      </p>
    </PlainPage>
  );
}
