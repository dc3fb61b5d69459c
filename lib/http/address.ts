import { randomBytes } from 'node:crypto';
import { guardChange } from './guard-change';
import { problem } from './problem';
import type { ProblemCode } from './problem-codes';

export const methods = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'] as const;
export type Method = (typeof methods)[number];

/** A request and the variable parts of its address. */
export type Asked = { request: Request; params: Params; query: URLSearchParams };
type Params = Record<string, string | string[]>;
export type Handler = (asked: Asked) => Promise<Response>;

type Context = { params: Promise<Params> };
type Exports = Record<
  Method | 'OPTIONS',
  (request: Request, context: Context) => Promise<Response>
>;

/**
 * What one address exports: its own methods, and for all others an answer that says which those are.
 *
 * A method that may change something is guarded; GET never is, and never changes anything. What nobody
 * foresaw ends here: `troubleOf` names it where it is known, otherwise it is a 500 with a reference that
 * is in the log too.
 *
 * @example
 * export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = address({ GET: hello }, troubleOf);
 */
export function address(
  handlers: Partial<Record<Method, Handler>>,
  troubleOf: (error: unknown) => ProblemCode | undefined,
): Exports {
  const allow = methods.filter((method) => handlers[method] !== undefined).join(', ');
  const other: Handler = async () => problem('wrong-method', { headers: { allow } });
  const answer = (method: Method) => async (request: Request, context: Context) => {
    const handler = handlers[method] ?? other;
    try {
      const isChange = method !== 'GET' && handlers[method] !== undefined;
      const refused = isChange ? guardChange(request) : undefined;
      if (refused !== undefined) return unkept(refused);
      const query = new URL(request.url).searchParams;
      return unkept(await handler({ request, params: await context.params, query }));
    } catch (error) {
      return unkept(faultOf(error, troubleOf, request));
    }
  };
  return {
    GET: answer('GET'),
    POST: answer('POST'),
    PUT: answer('PUT'),
    PATCH: answer('PATCH'),
    DELETE: answer('DELETE'),
    OPTIONS: async () => new Response(null, { status: 204, headers: { allow } }),
  };
}

/** Answers are not to be stored on the way, unless they say so themselves. */
function unkept(response: Response): Response {
  if (!response.headers.has('cache-control')) response.headers.set('cache-control', 'no-store');
  return response;
}

function faultOf(
  error: unknown,
  troubleOf: (error: unknown) => ProblemCode | undefined,
  { method, url }: Request,
): Response {
  const code = troubleOf(error);
  const reference = randomBytes(4).toString('hex');
  const { pathname } = new URL(url);
  console.error(`${new Date().toISOString()} ${reference} ${method} ${pathname}:`, error);
  if (code === undefined) return problem('unforeseen', { reference });
  return problem(code, { reference, headers: { 'retry-after': '5' } });
}
