import type { z } from 'zod';
import type { ThingKind } from '@/lib/schema/change';
import type { things } from '@/lib/schema/things';

export type Row<Kind extends ThingKind> = z.infer<(typeof things)[Kind]['Row']>;
export type New<Kind extends ThingKind> = z.infer<(typeof things)[Kind]['New']>;
export type Change<Kind extends ThingKind> = z.infer<(typeof things)[Kind]['Change']>;

/** The columns of some row, where the code does not know of which kind. */
export type Fields = Record<string, unknown>;
