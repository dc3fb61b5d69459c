import { z } from 'zod';
import { problemCodes, type ProblemCode } from './problem-codes';

/** The shape of every error answer (RFC 9457); `type` ends with the stable code, `title` may be reworded. */
export const Problem = z.looseObject({
  type: z.string().describe('/problems/ and the code'),
  status: z.int(),
  title: z.string(),
  errors: z.array(
    z.object({
      at: z.string().describe('The field at fault, with dots; empty for the whole'),
      says: z.string(),
    }),
  ),
});

type Errors = z.infer<typeof Problem>['errors'];
type More = { errors?: Errors; headers?: Record<string, string>; [member: string]: unknown };

/**
 * An error answer in the shape of RFC 9457.
 *
 * @example
 * problem('wrong-shape', { errors: [{ at: 'name', says: 'too short' }] });
 */
export function problem(code: ProblemCode, more: More = {}): Response {
  const [status, title] = problemCodes[code];
  return problemOf(code, status, title, more);
}

/** What the store will not keep, as a problem with the store's own code. */
export function refusal({ code, at, says }: { code: string; at: string; says: string }): Response {
  return problemOf(code, 422, says, { errors: [{ at, says }] });
}

function problemOf(
  code: string,
  status: number,
  title: string,
  { errors = [], headers = {}, ...members }: More,
): Response {
  return Response.json(
    { type: `/problems/${code}`, status, title, errors, ...members },
    { status, headers: { ...headers, 'content-type': 'application/problem+json' } },
  );
}
