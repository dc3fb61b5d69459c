import type { NewCut } from '@/lib/schema/new-cut';
import type { NewRunEvent } from '@/lib/schema/new-run-event';
import type { NewStrike } from '@/lib/schema/new-strike';
import type { NewCorrection, NewReading } from '@/lib/schema/reading';

/** The fields the box adds to a row itself. */
type Stamped = 'id' | 'deviceTime' | 'deviceSeq';

type Asked = {
  /** The job whose sheet shows it; the server works it out for itself. */
  jobId: string;
  /** Given where the row is on screen before it is kept, or is kept again after an error. */
  id?: string;
  /** RFC 3339 with an offset; the moment of keeping where it is left out. */
  deviceTime?: string;
};

/** What a screen hands over to be kept. */
export type Draft =
  | (Asked & { kind: 'reading'; row: Omit<NewReading, Stamped> })
  | (Asked & { kind: 'correction'; row: Omit<NewCorrection, Stamped> })
  | (Asked & { kind: 'cut'; row: Omit<NewCut, Stamped> })
  | (Asked & { kind: 'event'; row: Omit<NewRunEvent, Stamped> })
  | (Asked & { kind: 'strike'; row: Omit<NewStrike, Stamped> });

/**
 * `on this device`: on its disk and not answered for yet. `in the book`: the server has named it; the row
 * stays as a second copy. `needs a look`: the server refused it, a person must settle it. `set aside`: a
 * person settled it by not sending it, with a reason.
 */
export type EntryState = 'on this device' | 'in the book' | 'needs a look' | 'set aside';

/** Why the server would not take an entry. */
export type Refusal = { code: string; at: string; says: string };

type Held = {
  id: string;
  jobId: string;
  deviceId: string;
  deviceSeq: number;
  state: EntryState;
  /** Rises with every change of this row on the device; of two copies the higher is the newer. */
  revision: number;
  keptAtMs: number;
  /** Device clock less server clock as it was known then, ms; null when it was not known. */
  skewMs: number | null;
  /** Its number in the book. */
  seq: number | null;
  /** When the server got it, by the server's clock. */
  receivedAt: string | null;
  /** When the answer came, by the server's clock as far as it is known, ms. */
  inBookAtMs: number | null;
  refusal: Refusal | null;
  aside: { reason: string; atMs: number } | null;
};

/** One reading, correction, cut or event of a run, or a strike of the last two, as this device holds it. */
export type Entry =
  | (Held & { kind: 'reading'; row: NewReading })
  | (Held & { kind: 'correction'; row: NewCorrection })
  | (Held & { kind: 'cut'; row: NewCut })
  | (Held & { kind: 'event'; row: NewRunEvent })
  | (Held & { kind: 'strike'; row: NewStrike });
