'use client';

import { useEffect } from 'react';

/** The name of the page while this is mounted. The title of the address itself may arrive after it. */
export function useTitle(title: string): void {
  useEffect(() => {
    const wanted = `${title} · Fitwright`;
    const set = () => {
      if (document.title !== wanted) document.title = wanted;
    };
    set();
    const observer = new MutationObserver(set);
    observer.observe(document.head, { childList: true, subtree: true, characterData: true });
    return () => observer.disconnect();
  }, [title]);
}
