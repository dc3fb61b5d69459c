'use client';

import { useEffect, useState } from 'react';
import { Button } from './ui/primitives/button';
import { PlainPage } from './ui/primitives/plain-page';

type Props = { error: Error & { code?: string }; reset: () => void };

/** What a sheet says when it could not be drawn. Nothing kept is lost by it. */
export default function SheetError({ error, reset }: Props) {
  const why = useWhy(error.code ?? '');
  return (
    <PlainPage title="This sheet could not be drawn.">
      {why !== null && <p className="t-sentence">{why}</p>}
      <p className="t-sentence">
        Everything kept is still in the notebook. Draw it again; if it fails again, the reason is in
        the log of the machine that runs Fitwright.
      </p>
      <Button kind="main" onClick={reset}>
        Draw it again
      </Button>
    </PlainPage>
  );
}

/** The reason in words, which are fetched only now: every sheet would load them for the day they are needed. */
function useWhy(code: string): string | null {
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    import('@/lib/text/maths-words').then(
      ({ mathsWords }) => {
        if (!gone) setWhy(mathsWords(code));
      },
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [code]);
  return why;
}
