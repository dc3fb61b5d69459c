/** Decimals of sizes that leave the screen for other programs. */
export const usualDecimals = { mm: 6, in: 7 } as const;
