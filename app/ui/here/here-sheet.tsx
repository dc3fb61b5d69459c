'use client';

import dynamic from 'next/dynamic';
import { useEffect, useState } from 'react';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import { browserShelf } from '@/lib/shelf/browser-shelf';
import type { ShelfLine, ShelvedJob } from '@/lib/shelf/shelf';
import { hereWords } from '@/lib/text/here-words';
import { BenchOrCut } from '../cut/bench-or-cut';
import { JobProvider } from '../job/job-provider';
import { ShopFrame } from '../shop/shop-frame';
import { JobsOnDevice } from './jobs-on-device';

const BoardSheet = dynamic(() => import('../board/board-sheet').then((one) => one.BoardSheet));
const FitsSheet = dynamic(() => import('../fits/fits-sheet').then((one) => one.FitsSheet));
const RunsSheet = dynamic(() => import('../runs/runs-sheet').then((one) => one.RunsSheet));

type Found =
  | { kind: 'looking' }
  | { kind: 'job'; job: ShelvedJob; sheet: string }
  | { kind: 'list'; lines: ShelfLine[]; asked: 'jobs' | 'job' | 'other' };

/** A page opened without the notebook: a job this device has opened before, or the list of those. */
export function HereSheet() {
  const [found, setFound] = useState<Found>({ kind: 'looking' });
  useEffect(() => {
    let gone = false;
    void look(window.location.pathname).then((next) => {
      if (!gone) setFound(next);
    });
    return () => {
      gone = true;
    };
  }, []);
  if (found.kind === 'looking') return null;
  if (found.kind === 'list') {
    return (
      <ShopFrame current="Jobs">
        <h1>On this device</h1>
        <p className="t-sentence">{hereWords(found.asked, found.lines.length)}</p>
        <JobsOnDevice lines={found.lines} />
      </ShopFrame>
    );
  }
  const { sheet, chosen } = found.job;
  return (
    <JobProvider sheet={sheet} chosen={chosen}>
      <OpenSheet name={found.sheet} />
    </JobProvider>
  );
}

function OpenSheet({ name }: { name: string }) {
  switch (name) {
    case 'bench':
    case 'cut':
      return <BenchOrCut />;
    case 'fits':
      return <FitsSheet />;
    case 'runs':
      return <RunsSheet asked={new URLSearchParams(window.location.search).get('run')} />;
    default:
      return <BoardSheet />;
  }
}

async function look(path: string): Promise<Found> {
  const [, jobId, sheet = 'board'] = /^\/jobs\/([0-9a-f-]{36})(?:\/(\w+))?$/.exec(path) ?? [];
  try {
    const job = jobId === undefined ? null : await browserShelf().get(jobId);
    if (job !== null) {
      if (job.chosen.theme !== null) document.documentElement.dataset['theme'] = job.chosen.theme;
      document.documentElement.dataset['hand'] = job.chosen.hand;
      // What got into the book after the sheet was kept.
      await browserOutbox()
        .recall(job.jobId)
        .catch(() => undefined);
      return { kind: 'job', job, sheet };
    }
    const lines = await browserShelf().list();
    return {
      kind: 'list',
      lines,
      asked: path === '/' ? 'jobs' : jobId === undefined ? 'other' : 'job',
    };
  } catch {
    return { kind: 'list', lines: [], asked: 'jobs' };
  }
}
