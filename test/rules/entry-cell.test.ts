import { describe, expect, it } from 'vitest';
import { entryCell, type FreshEntry } from '@/lib/rules/entry-cell';
import { jobView } from '@/lib/rules/job-view';
import type { Correction, Reading } from '@/lib/schema/reading';
import { exampleSheet } from './example-sheet';
import { um } from './make';

const sheet = exampleSheet();
const view = jobView(sheet);
const piece = sheet.pieces.find(({ mark }) => mark === 'P5')!;
const feature = sheet.features.find(({ balloon }) => balloon === '4')!;
const cell = view.cell(piece.id, feature.id);
const gaugeId = sheet.gauges[0]!.id;
const partnerPm = view.fits[0]!.pairs.find((pair) => pair.externalPieceId === piece.id)!.standardPm;
const partnerStandardPm = Math.sqrt(partnerPm ** 2 - cell.size!.standardPm ** 2);

function reading(over: Partial<(FreshEntry & { kind: 'reading' })['row']> & { valuePm: number }) {
  return {
    kind: 'reading',
    id: 'fresh',
    deviceTime: '2026-03-14T10:43:00Z',
    row: {
      pieceId: piece.id,
      featureId: feature.id,
      gaugeId,
      personId: null,
      station: 'skirt',
      direction: 'B',
      text: '17.998',
      unit: 'mm',
      resolutionPm: um,
      temperatureMilliC: null,
      heldAs: null,
      ...over,
    },
  } as const;
}

function correction(
  over: Partial<Correction> & Pick<Correction, 'kind' | 'readingId'>,
): FreshEntry {
  const none = { toPieceId: null, toFeatureId: null, toStation: null, toDirection: null };
  const { kind, readingId, ...rest } = over;
  return {
    kind: 'correction',
    id: 'fresh correction',
    row: {
      kind,
      readingId,
      reason: '',
      personId: null,
      text: null,
      unit: null,
      valuePm: null,
      resolutionPm: null,
      ...none,
      ...rest,
    },
  };
}

const withFresh = (...fresh: FreshEntry[]) =>
  entryCell(cell, fresh, feature.kind, view.cells, partnerStandardPm);

describe('entryCell', () => {
  it('gives the same cell back when nothing concerns it', () => {
    expect(withFresh()).toBe(cell);
    expect(withFresh(reading({ valuePm: 1, pieceId: 'another' }))).toBe(cell);
    expect(withFresh(correction({ kind: 'void', readingId: 'another' }))).toBe(cell);
  });

  it('shows what the whole view will show once the reading is in it', () => {
    const fresh = reading({ valuePm: 17_998 * um });
    const row: Reading = {
      ...fresh.row,
      id: fresh.id,
      deviceTime: fresh.deviceTime,
      deviceSeq: 9999,
      seq: 9999,
      jobId: sheet.job.id,
      receivedAt: fresh.deviceTime,
      deviceId: 'device',
    };
    // The history is pooled anew with the reading, which the cell alone cannot know; all else is the same.
    const later = jobView({ ...sheet, readings: [...sheet.readings, row] }).cell(
      piece.id,
      feature.id,
    );
    const now = withFresh(fresh);
    expect(now.size).toEqual(later.size);
    expect(now.verdict).toEqual(later.verdict);
    expect(now.readings.map(({ id, state }) => [id, state])).toEqual(
      later.readings.map(({ id, state }) => [id, state]),
    );
  });

  it('judges by the doubt of the partner as well', () => {
    const fresh = reading({ valuePm: 17_998 * um });
    const alone = entryCell(cell, [fresh], feature.kind, view.cells);
    expect(alone.verdict?.state).toBe('inside');
    const beside = entryCell(cell, [fresh], feature.kind, view.cells, 5 * um);
    expect(beside.verdict?.state).toBe('unsure');
  });

  it('does not add a reading twice', () => {
    const fresh = reading({ valuePm: 17_998 * um });
    expect(withFresh(fresh, fresh).readings).toHaveLength(cell.readings.length + 1);
  });

  it('leaves a held reading out of the size', () => {
    const held = withFresh(reading({ valuePm: 18_498 * um, heldAs: 'thimble turn' }));
    expect(held.readings.at(-1)?.state).toBe('held');
    expect(held.size).toEqual(cell.size);
  });

  it('strikes out and puts back in the same frame', () => {
    const last = cell.readings[3]!;
    const struck = withFresh(correction({ kind: 'void', readingId: last.id }));
    expect(struck.readings[3]?.state).toBe('struck');
    expect(struck.size?.count).toBe(cell.size!.count - 1);
    const back = withFresh(
      correction({ kind: 'void', readingId: last.id }),
      correction({ kind: 'restore', readingId: last.id }),
    );
    expect(back.size).toEqual(cell.size);
  });

  it('lets a reading go that is moved away', () => {
    const moved = withFresh(
      correction({
        kind: 'move',
        readingId: cell.readings[0]!.id,
        toPieceId: 'another',
        toFeatureId: feature.id,
      }),
    );
    expect(moved.readings).toHaveLength(cell.readings.length - 1);
  });
});
