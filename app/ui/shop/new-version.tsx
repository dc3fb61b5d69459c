'use client';

import { useEffect, useState } from 'react';
import styles from './new-version.module.css';

/**
 * Keeps the app on this device through its service worker, and offers a newer one when it is there: by a
 * button, never by itself, and never while an entry is unsent or on no disk. Where there is no worker (plain http on
 * another machine's address) there is nothing to do.
 */
export function NewVersion() {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  const [isLast, setIsLast] = useState(false);
  useEffect(() => {
    const workers = (navigator as Partial<Navigator>).serviceWorker;
    if (workers === undefined || process.env.NODE_ENV !== 'production') return;
    let gone = false;
    const offer = (registration: ServiceWorkerRegistration) => {
      // The first worker of a device waits for nobody.
      if (!gone && registration.waiting !== null && workers.controller !== null) {
        setWaiting(registration.waiting);
      }
    };
    const register = async () => {
      const registration = await workers.register('/sw.js', { updateViaCache: 'none' });
      offer(registration);
      registration.addEventListener('updatefound', () => {
        registration.installing?.addEventListener('statechange', () => offer(registration));
      });
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') registration.update().catch(() => undefined);
      });
    };
    // A worker that cannot be had changes nothing for a page that is open.
    register().catch(() => undefined);
    return () => {
      gone = true;
    };
  }, []);

  useEffect(() => {
    if (waiting === null) return;
    let callOff: (() => void) | undefined;
    let gone = false;
    void Promise.all([import('@/lib/outbox/browser-outbox'), import('../bench/unkept')]).then(
      ([{ browserOutbox }, { countUnkept, onUnkept }]) => {
        if (gone) return;
        const outbox = browserOutbox();
        const look = () => {
          const { ready, unsent } = outbox.snapshot();
          setIsLast(ready && unsent === 0 && countUnkept() === 0);
        };
        look();
        const stops = [outbox.subscribe(look), onUnkept(look)];
        callOff = () => stops.forEach((stop) => stop());
      },
    );
    return () => {
      gone = true;
      callOff?.();
    };
  }, [waiting]);

  if (waiting === null || !isLast) return null;
  return (
    <p className={`${styles.version} not-on-paper`} role="status">
      There is a new version.
      <button type="button" className={styles.load} onClick={() => load(waiting)}>
        Load it
      </button>
    </p>
  );
}

function load(waiting: ServiceWorker): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), {
    once: true,
  });
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has one origin
  waiting.postMessage('load it');
}
