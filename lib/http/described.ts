import type { z } from 'zod';
import type { ProblemCode } from './problem-codes';

/** One method of one address, as the papers of the API describe it. */
export type Address = {
  method: 'get' | 'post' | 'patch';
  /** Below /api/v1, with {name} for what varies. */
  path: string;
  summary: string;
  more?: string;
  params?: z.ZodObject;
  query?: z.ZodObject;
  /** Whether the headers say who makes the change. */
  who?: boolean;
  body?: z.ZodType;
  answers: Record<number, Answer>;
  problems: readonly ProblemCode[];
  /** Whether the store may refuse it for what it says. */
  refusable?: boolean;
};

type Answer = { says: string; body?: z.ZodType; type?: string; headers?: z.ZodObject };

/** What may be wrong with any change. */
export const changeProblems: readonly ProblemCode[] = [
  'not-json',
  'origin-missing',
  'other-site',
  'body-too-large',
  'content-type',
  'wrong-shape',
];
