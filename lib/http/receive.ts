import type { z } from 'zod';
import { strayCharacter } from '@/lib/schema/stray-character';
import type { Asked, Handler } from './address';
import { problem } from './problem';
import { readBody } from './read-body';

const bodyBytesMax = 1_000_000;

type Bounds = {
  bytesMax?: number;
  /** The entries of the body are judged one by one later on. */
  eachOnItsOwn?: boolean;
};

/** Reads a JSON body, judges it by `schema`, and hands the typed value on. */
export function receive<Schema extends z.ZodType>(
  schema: Schema,
  respond: (value: z.output<Schema>, asked: Asked) => Promise<Response>,
  { bytesMax = bodyBytesMax, eachOnItsOwn = false }: Bounds = {},
): Handler {
  return async (asked) => {
    const body = await readBody(asked.request, bytesMax);
    if (body === 'too large') return problem('body-too-large', { bytesMax });
    const value = body === 'not text' ? undefined : parse(body.text);
    if (value === undefined) return problem('not-json');
    const judged = schema.safeParse(value);
    if (!judged.success) {
      const errors = judged.error.issues.slice(0, 20).map(({ path, message }) => ({
        at: path.join('.'),
        says: message,
      }));
      return problem('wrong-shape', { errors });
    }
    const stray = eachOnItsOwn ? undefined : strayCharacter(judged.data);
    if (stray !== undefined) {
      const says = 'It contains a character that cannot be kept';
      return problem('wrong-shape', { errors: [{ at: stray, says }] });
    }
    return respond(judged.data, asked);
  };
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
