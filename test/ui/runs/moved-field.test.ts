import { describe, expect, it } from 'vitest';
import { movedField } from '@/app/ui/runs/moved-field';

const mm = { unit: 'mm', decimal: ',' } as const;
const inch = { unit: 'in', decimal: '.' } as const;
const um = 1_000_000;

describe('how far an offset was moved, in its field', () => {
  it('has every digit that is kept, so that keeping it again alters nothing', () => {
    const kept = { offsetPm: -5 * um };
    expect(movedField.text(kept, 'radius', mm)).toBe('\u22120,0025');
    expect(movedField.read('\u22120,0025', 'radius', mm)).toEqual({ pm: -5 * um });
    expect(movedField.text(kept, 'diameter', mm)).toBe('\u22120,005');
    expect(movedField.text({ offsetPm: 12.7 * um }, 'radius', inch)).toBe('+0.00025');
    expect(movedField.read('+0.00025', 'radius', inch)).toEqual({ pm: 12.7 * um });
  });

  it('is empty where none was said, and reads nothing as none', () => {
    expect(movedField.text(undefined, 'radius', mm)).toBe('');
    expect(movedField.text({ offsetPm: null }, 'radius', mm)).toBe('');
    expect(movedField.read('  ', 'radius', mm)).toEqual({ pm: null });
  });

  it('is twice as much on diameter as on a radius dial, and says what it cannot read', () => {
    expect(movedField.read('0,01', 'radius', mm)).toEqual({ pm: 20 * um });
    expect(movedField.read('0,01', 'diameter', mm)).toEqual({ pm: 10 * um });
    expect(movedField.read('0,0,1', 'diameter', mm)).toContain('0,0,1');
  });
});
