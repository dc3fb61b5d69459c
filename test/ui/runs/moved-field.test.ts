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

  it('is what was kept where nobody changed it, also in a unit it has no end in', () => {
    const event = { offsetPm: -10 * um };
    const text = movedField.text(event, 'radius', inch);
    expect(text).toBe('\u22120.0001969'); // 0.005 / 25.4 = 0.00019685
    const was = { event, dial: 'radius' } as const;
    expect(movedField.read(text, 'radius', inch, was)).toEqual({ pm: -10 * um });
    expect(movedField.read(text, 'radius', inch)).not.toEqual({ pm: -10 * um });
    // The other dial, or another figure, is another amount.
    expect(movedField.read(text, 'diameter', inch, was)).toEqual({ pm: -5_001_260 });
    expect(movedField.read('\u22120.0002', 'radius', inch, was)).toEqual({ pm: -10_160_000 });
    expect(movedField.read('', 'radius', inch, was)).toEqual({ pm: null });
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
