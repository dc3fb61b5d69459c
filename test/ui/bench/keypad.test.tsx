import type { ReactElement, ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it, vi } from 'vitest';
import { Keypad, type KeypadKey } from '@/app/ui/bench/keypad';
import { isHeard } from './is-heard';

type Props = Record<string, unknown> & { children?: ReactNode };

/** The buttons of a keypad as React would draw them; it keeps no state, so it may be called as a function. */
function buttonsOf(props: Parameters<typeof Keypad.type>[0]): Map<string, Props> {
  const pad = Keypad.type(props) as ReactElement<Props>;
  const keys = [pad.props.children].flat().filter(Boolean) as ReactElement<Props>[];
  return new Map(
    keys.map((key) => {
      const draw = key.type as (props: Props) => ReactElement<Props>;
      return [String(key.props['value']), draw(key.props).props];
    }),
  );
}
const press = (button: Props, event: Partial<PointerEvent> = {}, page = new EventTarget()) => {
  const preventDefault = vi.fn();
  const onPointerDown = button['onPointerDown'] as (event: unknown) => void;
  onPointerDown({ button: 0, preventDefault, currentTarget: { ownerDocument: page }, ...event });
  return preventDefault;
};
const click = (button: Props, detail: number) =>
  (button['onClick'] as (event: unknown) => void)({ detail });

describe('Keypad', () => {
  it('has 7 8 9 on top, the mark, 0 and stroke at the foot', () => {
    const html = renderToStaticMarkup(<Keypad decimal="." onKey={() => {}} />);
    const words = [...html.matchAll(/<button[^>]*>([^<]*)/g)].map(([, word]) => word);
    expect(words.join(' ')).toBe('7 8 9 Rub out 4 5 6 + \u2212 1 2 3 Log . 0 /');
  });

  it('shows the decimal mark of the person on the one mark key', () => {
    expect([...buttonsOf({ decimal: ',', onKey: () => {} }).keys()]).toContain(',');
    expect([...buttonsOf({ decimal: ',', onKey: () => {} }).keys()]).not.toContain('.');
  });

  it('acts once when a key is pressed, and not again when it is let go', () => {
    const pressed: KeypadKey[] = [];
    const seven = buttonsOf({ decimal: '.', onKey: (key) => pressed.push(key) }).get('7')!;
    press(seven);
    expect(pressed).toEqual(['7']);
    click(seven, 1);
    expect(pressed).toEqual(['7']);
  });

  it('keeps the click that ends the press from whatever has come under the finger meanwhile', () => {
    const page = new EventTarget();
    const log = buttonsOf({ decimal: '.', onKey: () => {} }).get('log')!;
    press(log, {}, page);
    expect(isHeard(page, 1)).toBe(false);
    const other = new EventTarget();
    press(log, { button: 2 }, other);
    expect(isHeard(other, 1)).toBe(true);
  });

  it('leaves the focus in the entry', () => {
    const seven = buttonsOf({ decimal: '.', onKey: () => {} }).get('7')!;
    expect(press(seven)).toHaveBeenCalled();
  });

  it('acts for a keyboard or a screen reader, which click without a press', () => {
    const pressed: KeypadKey[] = [];
    const log = buttonsOf({ decimal: '.', onKey: (key) => pressed.push(key) }).get('log')!;
    click(log, 0);
    expect(pressed).toEqual(['log']);
  });

  it('does nothing for the other buttons of a mouse', () => {
    const pressed: KeypadKey[] = [];
    const seven = buttonsOf({ decimal: '.', onKey: (key) => pressed.push(key) }).get('7')!;
    press(seven, { button: 2 });
    expect(pressed).toEqual([]);
  });

  it('logs nothing while it may not, and says so', () => {
    const pressed: KeypadKey[] = [];
    const keys = buttonsOf({ decimal: '.', onKey: (key) => pressed.push(key), logOff: true });
    press(keys.get('log')!);
    click(keys.get('log')!, 0);
    expect(pressed).toEqual([]);
    expect(keys.get('log')!['aria-disabled']).toBe(true);
    press(keys.get('7')!);
    expect(pressed).toEqual(['7']);
  });

  it('opens no menu on a long press', () => {
    const preventDefault = vi.fn();
    const seven = buttonsOf({ decimal: '.', onKey: () => {} }).get('7')!;
    (seven['onContextMenu'] as (event: unknown) => void)({ preventDefault });
    expect(preventDefault).toHaveBeenCalled();
  });

  it('has a column for unit, last digits, what comes next and more, which type nothing', () => {
    const pressed: KeypadKey[] = [];
    const side = { unit: 'mm', unitChanged: false, lastDigits: false, next: 'piece' } as const;
    const keys = buttonsOf({ decimal: '.', onKey: (key) => pressed.push(key), side });
    for (const key of ['unit', 'last digits', 'next', 'more']) press(keys.get(key)!);
    expect(pressed).toEqual(['unit', 'last digits', 'next', 'more']);
    expect(keys.get('unit')!['aria-label']).toBe('mm: change to inches');
    expect(keys.get('next')!['aria-label']).toBe('next piece');
    expect(keys.size).toBe(19);
  });

  it('says what of the column is on, and what cannot be had', () => {
    const side = { unit: 'in', unitChanged: true, lastDigits: null, next: null } as const;
    const pressed: KeypadKey[] = [];
    const keys = buttonsOf({ decimal: '.', onKey: (key) => pressed.push(key), side });
    expect(keys.get('unit')!['aria-pressed']).toBe(true);
    expect(keys.get('last digits')!['aria-disabled']).toBe(true);
    press(keys.get('last digits')!);
    press(keys.get('next')!);
    expect(pressed).toEqual([]);
    const on = buttonsOf({ decimal: '.', onKey: () => {}, side: { ...side, lastDigits: true } });
    expect(on.get('last digits')!['aria-pressed']).toBe(true);
  });

  it('is that column alone beside the keyboard of a phone', () => {
    const side = { unit: 'mm', unitChanged: false, lastDigits: false, next: 'piece' } as const;
    const keys = buttonsOf({ decimal: '.', onKey: () => {}, side, sideOnly: true });
    expect([...keys.keys()]).toEqual(['unit', 'last digits', 'next', 'more']);
  });
});
