/** What the entry line says back, until the next thing is typed or answered. */
export type Notice =
  | { kind: 'error'; says: string }
  | { kind: 'said'; says: string }
  | { kind: 'question'; title: string; answers: { label: string; act: () => void }[] }
  | { kind: 'repeat'; says: string; keep: () => void };
