/** Whether two pair marks would be taken for one, whatever their letters' case and spaces. No mark at all is like no other. */
export function samePairMark(one: string, other: string): boolean {
  const said = one.trim().toLowerCase();
  return said !== '' && said === other.trim().toLowerCase();
}
