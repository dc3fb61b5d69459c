/** Two ends of an interval, in the units of what it is about; low is never above high. */
export type Interval = { low: number; high: number };
