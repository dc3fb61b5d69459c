/** One drawn thing, in px from the top left. Its role says what it means; the stylesheet says how that looks. */
export type Shape<Role extends string> =
  | { kind: 'rect'; role: Role; x: number; y: number; width: number; height: number }
  | { kind: 'line'; role: Role; x1: number; y1: number; x2: number; y2: number }
  | { kind: 'path'; role: Role; d: string }
  | { kind: 'circle'; role: Role; cx: number; cy: number; r: number }
  | { kind: 'text'; role: Role; x: number; y: number; anchor: Anchor; text: string };

export type Anchor = 'start' | 'middle' | 'end';
