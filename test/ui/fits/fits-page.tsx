import { text as textOf } from 'node:stream/consumers';
import { prerenderToNodeStream } from 'react-dom/static';
import { FitsSheet } from '@/app/ui/fits/fits-sheet';
import { JobProvider, type Chosen } from '@/app/ui/job/job-provider';
import type { JobSheet } from '@/lib/schema/sheet';

const usual: Chosen = { unit: 'mm', decimal: '.', hand: 'right', personId: null };

/** The whole Fits sheet as the server draws it with all that comes later: its markup, and what it reads. */
export async function fitsPage(sheet: JobSheet, chosen: Partial<Chosen> = {}) {
  const { prelude } = await prerenderToNodeStream(
    <JobProvider sheet={sheet} chosen={{ ...usual, ...chosen }}>
      <FitsSheet />
    </JobProvider>,
  );
  const html = await textOf(prelude);
  return { html, text: readOf(html) };
}

/** The words of a piece of markup, its tags taken out. */
export function readOf(html: string): string {
  return html
    .replace(/<!--.*?-->|<style.*?<\/style>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x27;/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
}
