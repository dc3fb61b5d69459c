import type { z } from 'zod';
import type { Outcome } from '@/lib/schema/reading';
import { strayCharacter } from '@/lib/schema/stray-character';
import { refusals, type RefusalCode } from './refused';

/** The outcome of an entry that is not kept; `name` is what it is of, and stands before the code. */
export function refusedEntry(
  name: string,
  id: string,
  code: RefusalCode,
  at: string,
  says: string = refusals[code],
): Outcome {
  return { id, state: 'refused', code: `${name}/${code}`, at, says };
}

/** Judges the entries of a batch one by one, those of a wrong shape at once, and answers in the order sent. */
export async function keepEach<Sent>(
  name: string,
  schema: z.ZodType<Sent>,
  entries: readonly unknown[],
  keep: (sent: Sent) => Promise<Outcome>,
): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  for (const given of entries) {
    const judged = sentEntry(name, schema, given);
    outcomes.push('state' in judged ? judged : await keep(judged.sent));
  }
  return outcomes;
}

/** An entry of a batch in its shape, or the outcome that says what is wrong with it. */
function sentEntry<Sent>(
  name: string,
  schema: z.ZodType<Sent>,
  given: unknown,
): { sent: Sent } | Outcome {
  const id = (given as { id?: unknown } | null)?.id;
  const said = typeof id === 'string' ? id.slice(0, 64) : '';
  const parsed = schema.safeParse(given);
  if (!parsed.success) {
    const issue = parsed.error.issues[0]!;
    return refusedEntry(name, said, 'wrong-shape', issue.path.join('.'), issue.message);
  }
  const stray = strayCharacter(parsed.data);
  if (stray === undefined) return { sent: parsed.data };
  const says = 'It contains a character that cannot be kept';
  return refusedEntry(name, said, 'wrong-shape', stray, says);
}
