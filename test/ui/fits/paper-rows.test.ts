import { describe, expect, it } from 'vitest';
import { paperRows } from '@/app/ui/fits/paper-rows';
import { smallJob, type SmallJob } from '@/test/rules/small-job';

const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const six = (microns: number) => Array.from({ length: 6 }, () => microns);

function rowsOf(job: SmallJob) {
  const { sheet, fits } = smallJob(job);
  const mark = (id: string) => sheet.pieces.find((piece) => piece.id === id)!.mark;
  const person = (id: string | null) => (id === null ? null : 'M. Hale');
  return paperRows(fits[0]!, um, mm, { mark, person }, (at) => at.slice(0, 10));
}

describe('the rows of the printed sheet', () => {
  it('have room to write the size of a shaft to make, and of a bore to make', () => {
    const [shaft] = rowsOf({ bores: [six(10)] });
    expect(shaft).toMatchObject({
      internal: 'L1', internalSize: '18.010 ± 0.001', external: 'P1', externalSize: '',
      mark: { state: 'to make' }, remark: 'make P1 to 18.000',
    }); // prettier-ignore
    const [bore] = rowsOf({ shafts: [six(0)] });
    expect(bore).toMatchObject({
      internal: 'L1', internalSize: '', external: 'P1', externalSize: '18.000 ± 0.001',
      mark: { state: 'to make' }, remark: 'make L1 to 18.010',
    }); // prettier-ignore
  });
});
