/** How a material grows with heat; coefficients in 1e-9 per degree C. */
export type HeatMaterial = {
  /** Of the table a word, of the shop's own its id. */
  key: string;
  name: string;
  expansionNanoPerC: number;
  /** The least and the most that published figures give; alike where only one was found. */
  lowNanoPerC: number;
  highNanoPerC: number;
  /** What temperatures the figure is for. */
  over: string;
  source: string;
};

export type StarterMaterial = HeatMaterial & {
  /** Other names that mean it, in small letters. */
  names: readonly string[];
  /** Words that make it likely where they stand in a longer name. */
  likely: readonly string[];
};

const callister = 'Callister, Materials Science and Engineering, table B.6';
const room = 'Room temperature';
const warm = '20 to 100 °C';

const of = (
  key: string,
  name: string,
  [low, middle, high]: readonly [number, number, number],
  over: string,
  source: string,
  names: readonly string[] = [],
  likely: readonly string[] = [],
): StarterMaterial => ({
  key,
  name,
  expansionNanoPerC: middle,
  lowNanoPerC: low,
  highNanoPerC: high,
  over,
  source,
  names,
  likely,
});

/**
 * Materials to start from, with what was published of each. "At second hand" says that the standard or the
 * book itself was not seen, only its figures as others print them. Where a source gives a range and no
 * figure, the middle of the range is taken and the source says so.
 */
export const starterMaterials: readonly StarterMaterial[] = [
  of('mild steel', 'Mild steel', [11_300, 11_700, 12_200], room,
    `${callister}: 1020, 1040; AISI 1010 from tables at second hand`,
    ['carbon steel', 'en1a', 'en3', 'en8', '1018', '1020', 'bms', 's355'], ['steel', 'bms']),
  of('alloy steel', 'Alloy steel', [11_300, 12_300, 12_300], room,
    `${callister}: 4140, 4340; low end that of 1040`,
    ['4140', '4340', 'en19', 'en24', 'en16', 'chromoly'], ['4140', '4340', 'en24', 'en19']),
  of('tool steel', 'Tool steel', [9_700, 10_400, 10_500], warm,
    'Tables of AISI T1, M2, W1, D2 at second hand',
    ['silver steel', 'gauge plate', 'drill rod', 'high-speed steel', 'hss'],
    ['tool steel', 'silver steel', 'drill rod']),
  of('stainless 304', 'Stainless 303, 304', [16_000, 16_000, 17_200], warm,
    `EN 10088-1 at second hand; high end ${callister}`,
    ['stainless', 'stainless steel', '303', '304', '1.4301', '1.4305', 'a2'], ['stainless', '303', '304']),
  of('stainless 316', 'Stainless 316', [15_900, 16_000, 16_000], warm,
    `EN 10088-1 at second hand; low end ${callister}`, ['316', '316l', '1.4401', 'a4'], ['316', '316l']),
  of('stainless 416', 'Stainless 416, 420, 440', [10_200, 10_500, 10_500], warm,
    `EN 10088-1 at second hand; low end ${callister}: 440A`,
    ['410', '416', '420', '440', '440c', '1.4021', '1.4005'], ['416', '420', '440', '440c', 'martensitic']),
  of('stainless 430', 'Stainless 430', [10_000, 10_000, 10_800], warm,
    `EN 10088-1 at second hand; high end ${callister}: 405`, ['430', '430f', '1.4016'], ['430', '430f']),
  of('stainless 630', 'Stainless 17-4 PH', [10_800, 10_900, 10_900], warm,
    'EN 10088-1 at second hand: 630; low end from tables', ['17-4', '17-4ph', '630', '1.4542'], ['17-4', '17-4ph']),
  of('grey iron', 'Grey cast iron', [10_000, 11_400, 11_400], room,
    `${callister}: G3000; low end Dooley, Applied Science for Metal Workers`,
    ['cast iron', 'grey iron', 'gray iron', 'graphite iron', 'ci', 'meehanite', 'gjl'],
    ['cast iron', 'graphite iron', 'grey iron', 'gray iron', 'iron']),
  of('ductile iron', 'Ductile iron', [10_600, 11_200, 11_200], room, `${callister}: 60-40-18, 80-55-06`,
    ['sg iron', 'nodular iron', 'spheroidal iron', 'gjs'], ['sg iron', 'nodular', 'ductile', 'spheroidal']),
  of('aluminium', 'Aluminium, wrought', [22_900, 23_600, 23_600], room, `${callister}: 2024, 7075, 6061`,
    ['aluminium', 'aluminum', 'dural', '6061', '6082', '2014', '2024', '7075', 'he30', 'he15'],
    ['aluminium', 'aluminum', 'dural', '6061', '6082', '7075', '2024']),
  of('aluminium cast', 'Aluminium, cast', [21_500, 21_500, 21_500], room, `${callister}: 356`,
    ['lm25', '356', 'cast aluminium', 'cast aluminum'], ['lm25', 'cast aluminium', 'cast aluminum']),
  of('brass', 'Brass', [19_900, 20_500, 20_500], room, `${callister}: C36000, C26000`,
    ['cz121', 'c360', 'free-cutting brass', 'ms58'], ['brass']),
  of('bronze', 'Bearing bronze', [17_800, 18_000, 18_000], room,
    `${callister}: C93200; low end C51000 from tables at second hand`,
    ['bronze', 'phosphor bronze', 'pb1', 'sae 660', 'sae660', 'gunmetal', 'lg2', 'colphos'],
    ['bronze', 'gunmetal']),
  of('aluminium bronze', 'Aluminium bronze', [16_200, 16_200, 16_200], room,
    'Tables of C62300 at second hand', ['aluminum bronze', 'ab2'], ['aluminium bronze', 'aluminum bronze']),
  of('copper', 'Copper', [16_000, 17_000, 17_000], room,
    `${callister}: C11000; low end Dooley, Applied Science for Metal Workers`, ['c101', 'c110'], ['copper']),
  of('titanium', 'Titanium', [8_600, 8_600, 9_400], room, `${callister}: pure, 6-4; high end 5-2.5`,
    ['ti-6al-4v', 'ti64', 'ti 6-4'], ['titanium']),
  of('magnesium', 'Magnesium alloy', [26_000, 26_000, 26_000], room, `${callister}: AZ31B, AZ91D`,
    ['magnesium', 'az31', 'az91', 'elektron'], ['magnesium']),
  of('invar', 'Invar', [1_600, 1_600, 1_600], room, callister, ['invar 36'], ['invar']),
  of('graphite', 'Graphite', [2_200, 4_100, 6_000], room,
    `${callister}: isostatically moulded, middle of its range`, ['carbon graphite'], ['graphite']),
  of('ptfe', 'PTFE', [126_000, 171_000, 216_000], room, `${callister}: middle of its range`,
    ['teflon'], ['ptfe']),
  of('acetal', 'Acetal', [80_000, 87_500, 95_000], room,
    'Crawford, Plastics Engineering, table 1.8: middle of homopolymer and copolymer', ['delrin', 'pom'],
    ['acetal', 'delrin', 'pom']),
  of('nylon', 'Nylon 66', [90_000, 144_000, 144_000], room,
    `${callister}; low end Crawford, Plastics Engineering, table 1.8`, ['nylon', 'pa66'], ['nylon']),
  of('peek', 'PEEK', [72_000, 78_500, 85_000], room, `${callister}: middle of its range`, [], ['peek']),
]; // prettier-ignore
