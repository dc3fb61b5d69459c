/** How a material grows: mean coefficient of linear expansion at room temperature, per degree C. */
export type Expansion = { name: string; perC: number };

/**
 * Source: W. D. Callister, D. G. Rethwisch, Fundamentals of Materials Science and Engineering, 3rd ed.,
 * table B.6, room temperature (seen as an extract): steels 11.3 to 12.3, 304 stainless 17.2, grey irons
 * 11.4, ductile irons 10.6 to 11.2, aluminium alloys 21.5 to 23.6, free-cutting brass 20.5, bearing bronze
 * 18.0, copper 17.0, titanium 8.6, Invar 1.6. The middle of each group is taken. The first that is named in
 * the words of the part counts, so that the more special stand first.
 */
const table: readonly (Expansion & { named: RegExp })[] = [
  { name: 'Invar', perC: 1.6e-6, named: /invar/i },
  { name: 'stainless steel', perC: 17.2e-6, named: /stainless|inox|\b30[34]\b/i },
  { name: 'ductile iron', perC: 10.9e-6, named: /ductile|nodular|spheroidal|\bSG iron/i },
  { name: 'cast iron', perC: 11.4e-6, named: /cast iron|gr[ae]y iron|graphite iron|meehanite/i },
  {
    name: 'aluminium',
    perC: 23.4e-6,
    named: /alumin(?:i)?um|\bdural|\b(?:2024|6061|6082|7075)\b/i,
  },
  { name: 'bronze', perC: 18e-6, named: /bronze|gunmetal/i },
  { name: 'brass', perC: 20.5e-6, named: /brass/i },
  { name: 'copper', perC: 17e-6, named: /copper/i },
  { name: 'titanium', perC: 8.6e-6, named: /titanium/i },
  { name: 'steel', perC: 11.7e-6, named: /steel|\bEN ?[138]\w*\b/i },
];

/** The expansion of the material a part is said to be of; null where it is not in the table. */
export function expansionOf(material: string): Expansion | null {
  const found = table.find(({ named }) => named.test(material));
  return found === undefined ? null : { name: found.name, perC: found.perC };
}
