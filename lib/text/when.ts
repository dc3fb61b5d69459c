const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long' });
const time = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

/** "14 March, 11:55", in the reader's own time zone. */
export function dayAndTime(instant: string): string {
  const at = new Date(instant);
  return `${day.format(at)}, ${time.format(at)}`;
}

/** "14 March": a day without a time. */
export function dayOf(instant: string): string {
  return day.format(new Date(instant));
}

/** "11:55", in the reader's own time zone. */
export function timeOf(instant: string): string {
  return time.format(new Date(instant));
}
