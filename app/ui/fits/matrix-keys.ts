/** A place in the table: -1 is the head of the rows or columns. */
export type Place = { row: number; column: number };

/**
 * Where a key leads from a place of the table, or null where it is no key of the table. Arrows go one on,
 * Home and End to the ends of a row (with Ctrl: of the table), Page Up and Page Down a screen of rows.
 */
export function placeAfter(
  { row, column }: Place,
  key: string,
  ctrl: boolean,
  table: { rows: number; columns: number; page: number },
): Place | null {
  const held = (to: Place): Place => {
    const bounded = {
      row: Math.min(table.rows - 1, Math.max(-1, to.row)),
      column: Math.min(table.columns - 1, Math.max(-1, to.column)),
    };
    // The corner is no cell.
    return bounded.row === -1 && bounded.column === -1 ? { row, column } : bounded;
  };
  switch (key) {
    case 'ArrowUp':
      return held({ row: row - 1, column });
    case 'ArrowDown':
      return held({ row: row + 1, column });
    case 'ArrowLeft':
      return held({ row, column: column - 1 });
    case 'ArrowRight':
      return held({ row, column: column + 1 });
    case 'Home':
      return held(ctrl ? { row: 0, column: 0 } : { row, column: 0 });
    case 'End':
      return held(
        ctrl
          ? { row: table.rows - 1, column: table.columns - 1 }
          : { row, column: table.columns - 1 },
      );
    case 'PageUp':
      return held({ row: Math.max(Math.min(row, 0), row - table.page), column });
    case 'PageDown':
      return held({ row: row + table.page, column });
    default:
      return null;
  }
}
