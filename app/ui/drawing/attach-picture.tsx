'use client';

import { useRef } from 'react';
import { uuidv7 } from '@/lib/outbox/ids';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import styles from './drawing.module.css';

/** Attaches a PNG or JPEG picture of the drawing to the job. */
export function AttachPicture() {
  const { view } = useJob();
  const { make, trouble, busy } = useThings();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button disabled={busy} onClick={() => input.current?.click()}>
        {busy ? 'Keeping the picture' : 'Attach a picture'}
      </Button>
      <input
        ref={input}
        type="file"
        accept="image/png,image/jpeg"
        hidden
        aria-label="Picture of the drawing, PNG or JPEG"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file !== undefined) void keep(file);
        }}
      />
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </>
  );

  async function keep(file: File) {
    await make('picture', {
      id: uuidv7(),
      jobId: view.sheet.job.id,
      name: file.name.slice(0, 120),
      base64: await base64Of(file),
    });
  }
}

function base64Of(file: File): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => resolve(String(reader.result).split(',')[1] ?? ''));
    reader.addEventListener('error', () => reject(reader.error ?? new Error('file not readable')));
    reader.readAsDataURL(file);
  });
}
