/** What the entry line says back, until the next thing is typed or answered. */
export type Notice =
  | { kind: 'error'; says: string }
  | { kind: 'said'; says: string }
  | {
      kind: 'question';
      title: string;
      answers: { label: string; act: () => void }[];
      /** What is done and said where nobody answers and the next reading comes; left out, nothing is kept. */
      otherwise?: { act: () => void; says: string };
    }
  | { kind: 'repeat'; says: string; keep: () => void };
