import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fault } from './book';
import { createWorld, pass, quiet, reading, voiding, type Tab } from './world';

const faults: (Fault | null)[] = [
  null,
  'no network',
  'cut after commit',
  'late',
  'repeated',
  'overtaken',
  'names half',
  'names none',
  'a portal answers',
  401,
  429,
  500,
];

type Step = { keep: number; restart: boolean; late: boolean; waitMs: number };
const step = fc.record<Step>({
  keep: fc.integer({ min: 0, max: 4 }),
  restart: fc.boolean(),
  late: fc.boolean(),
  waitMs: fc.constantFrom(0, 700, 5000, 16_000),
});

describe('exactly once, whatever the network does', () => {
  it('brings into the book the set that was kept, each once, for any faults, restarts and tabs', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(step, { minLength: 1, maxLength: 6 }),
        fc.array(fc.constantFrom(...faults), { maxLength: 12 }),
        fc.boolean(),
        fc.constantFrom(0, 3_600_000, -86_400_000),
        async (steps, script, withLocks, skewMs) => {
          const world = createWorld();
          world.skewMs = skewMs;
          world.book.faults = [...script];
          const without = withLocks ? {} : ({ locks: true } as const);
          let tabs: [Tab, Tab] = [world.tab(without), world.tab(without)];
          const kept = new Map<string, string>();
          for (const { keep, restart, late, waitMs } of steps) {
            for (let i = 0; i < keep; i += 1) {
              const text = `20.${String(kept.size).padStart(3, '0')}`;
              const before = [...kept.keys()].at(-1);
              const draft = i === 3 && before !== undefined ? voiding(before) : reading(text);
              const entry = await tabs[i % 2 === 0 ? 0 : 1].keep(draft);
              kept.set(entry.id, JSON.stringify(entry.row));
            }
            await pass(world, waitMs, 4000);
            if (late) world.book.deliverLate();
            if (restart) {
              tabs.forEach((tab) => tab.kill());
              tabs = [world.tab(without), world.tab(without)];
            }
          }
          world.book.faults = [];
          const allSent = () =>
            tabs.every((tab) => tab.snapshot().ready && tab.snapshot().unsent === 0);
          for (let i = 0; i < 60 && !allSent(); i += 1) await pass(world, 5000, 5000);
          world.book.deliverLate();
          await quiet();
          tabs.forEach((tab) => tab.stop());

          const { rows } = world.book;
          expect([...rows.keys()].sort()).toEqual([...kept.keys()].sort());
          for (const [id, { row }] of rows) {
            expect(JSON.stringify(row)).toBe(kept.get(id));
          }
          const numbers = [...rows.values()].map(({ row }) => row.deviceSeq);
          expect(numbers.sort((a, b) => a - b)).toEqual(numbers.map((_, i) => i + 1));
          expect(tabs[0].snapshot().tray).toEqual([]);
          expect(tabs.map((tab) => tab.snapshot().unsent)).toEqual([0, 0]);
        },
      ),
      { numRuns: 150 },
    );
  }, 120_000);
});
