/** One published work (or a plain statement that there is none) behind figures and rules. */
export interface Source {
  /** Full reference as printed in "about the science" and in footnotes. */
  readonly reference: string;
  /** Short form for a footnote line. */
  readonly short: string;
  /** Set when we have it from memory or second hand; shown wherever the source is shown. */
  readonly caveat?: string;
}

/**
 * The register of sources. No other file spells a reference out. Where a source was recalled and
 * not re-read, or is quoted through another work, `caveat` says so.
 */
export const SOURCES = {
  hand2010: {
    reference:
      'Hand MS, Thatcher CD, Remillard RL, Roudebush P, Novotny BJ (eds). Small Animal Clinical Nutrition, 5th ed. Mark Morris Institute, 2010.',
    short: 'Hand et al. 2010',
  },
  hand2010Senior: {
    reference:
      'Hand MS et al. (eds). Small Animal Clinical Nutrition, 5th ed., 2010: energy of senior dogs, about 1.4 × resting energy.',
    short: 'Hand et al. 2010',
    caveat: 'from memory',
  },
  nrc2006: {
    reference:
      'National Research Council. Nutrient Requirements of Dogs and Cats. National Academies Press, 2006.',
    short: 'NRC 2006',
    caveat: 'from memory',
  },
  nrcGrowth: {
    reference:
      'National Research Council. Nutrient Requirements of Dogs and Cats. National Academies Press, 2006: growth equation.',
    short: 'NRC 2006, growth',
  },
  kleiber1961: {
    reference: 'Kleiber M. The Fire of Life. Wiley, 1961.',
    short: 'Kleiber',
    caveat: 'from memory',
  },
  fediaf2017: {
    reference:
      'FEDIAF. Nutritional Guidelines for Complete and Complementary Pet Food for Cats and Dogs, 2017: Table VII-12, p. 118 and p. 127.',
    short: 'FEDIAF 2017',
  },
  fediaf2017Activity: {
    reference:
      'FEDIAF. Nutritional Guidelines for Complete and Complementary Pet Food for Cats and Dogs, 2017: energy by activity.',
    short: 'FEDIAF 2017, by activity',
    caveat: 'from memory',
  },
  fediaf2021: {
    reference: 'FEDIAF. Nutritional Guidelines, 2021: energy of growing dogs.',
    short: 'FEDIAF 2021',
  },
  fediafGrowthSteps: {
    reference:
      'FEDIAF energy of growing dogs, 210, 175 and 140 kcal/kg^0.75 by the share of adult weight, as printed in a veterinary nursing journal.',
    short: 'FEDIAF, growth by steps',
  },
  lmuThesis: {
    reference:
      'Doctoral thesis, LMU Munich: energy intake of privately kept dogs measured at home, n = 586, 98 ± 29 kcal/kg^0.75.',
    short: 'LMU Munich thesis',
  },
  bermingham2014: {
    reference:
      'Bermingham EN et al. Energy requirements of adult dogs: a meta-analysis. PLoS ONE 2014;9(10):e109681.',
    short: 'Bermingham et al. 2014',
  },
  german2011: {
    reference:
      'German AJ et al. Low-maintenance energy requirements of obese dogs after weight loss. Br J Nutr 2011;106(S1):S93–S96.',
    short: 'German et al. 2011',
  },
  german2015: {
    reference: 'German AJ et al. BMC Vet Res 2015;11:253.',
    short: 'German et al. 2015',
  },
  wakshlag2012: {
    reference: 'Wakshlag JJ et al. J Am Vet Med Assoc 2012;240:413.',
    short: 'Wakshlag et al. 2012',
  },
  linder2012: {
    reference: 'Linder DE et al. Vet Q 2012;32:123.',
    short: 'Linder et al. 2012',
  },
  laflamme1997: {
    reference:
      'Laflamme DP. Development and validation of a body condition score system for dogs. 1997.',
    short: 'Laflamme 1997',
  },
  wsavaNutrition: {
    reference: 'WSAVA Global Nutrition Committee: body condition and muscle condition charts.',
    short: 'WSAVA charts',
  },
  cliniciansBrief2010: {
    reference: 'Clinician’s Brief, 2010: body fat by condition score point; weight-loss sheet.',
    short: 'Clinician’s Brief 2010',
  },
  aahaWeight: {
    reference: 'AAHA weight management toolkit and monitoring page.',
    short: 'AAHA weight toolkit',
  },
  aahaLifeStages: {
    reference: 'AAHA Canine Life Stage Guidelines, 2019.',
    short: 'AAHA 2019',
  },
  rehabilitation2018: {
    reference: 'WSAVA rehabilitation, 2018: exercises on 3 to 5 days a week, on alternate days.',
    short: 'WSAVA rehabilitation 2018',
    caveat: 'read in part',
  },
  mcmillan2024: {
    reference: 'McMillan KM et al. 2024: life spans of dogs by size and breed.',
    short: 'McMillan et al. 2024',
    caveat: 'from a summary',
  },
  vetTimes2015: {
    reference: 'Vet Times, 3 November 2015: 10–15 % overweight per condition score point.',
    short: 'Vet Times 2015',
  },
  greyhoundFat: {
    reference: 'Body fat of greyhounds at condition score 5/9 measured as 7.2 %.',
    short: 'Greyhound body fat study',
  },
  scielo2005: {
    reference: 'SciELO, 2005: weight loss of client-owned dogs at home, about 0.75 % a week.',
    short: 'SciELO 2005',
  },
  taylor1982: {
    reference:
      'Taylor CR, Heglund NC, Maloiy GMO. Energetics and mechanics of terrestrial locomotion. J Exp Biol 1982;97:1–21.',
    short: 'Taylor et al. 1982',
  },
  bryce2017: {
    reference: 'Bryce CM, Williams TM. J Exp Biol 2017;220:312.',
    short: 'Bryce & Williams 2017',
  },
  climbEfficiency: {
    reference: 'Best muscular efficiency of uphill running, 28 %: 35 J/kg per metre climbed.',
    short: 'Uphill efficiency 28 %',
  },
  hart2020: {
    reference: 'Hart BL et al. Front Vet Sci 2020;7:472.',
    short: 'Hart et al. 2020',
  },
  salmeri1991: {
    reference: 'Salmeri KR et al. J Am Vet Med Assoc 1991;198:1193.',
    short: 'Salmeri et al. 1991',
  },
  plateClosure: {
    reference:
      'Published growth-plate closure times: averages 6 to 12.3 months by plate, ranges to 540 days.',
    short: 'Growth-plate closure times',
  },
  sportRules: {
    reference: 'Rules of harness running sports: lowest starting ages of 12 to 18 months.',
    short: 'Sport rules',
  },
  vetCompass: {
    reference: 'Royal Veterinary College VetCompass: heat-related illness in dogs.',
    short: 'RVC VetCompass',
  },
  nielsen2014: {
    reference:
      'Nielsen RO et al. 2014: novice runners; starting load in obese novices (Int J Sports Phys Ther) and weekly progression over 30 %.',
    short: 'Nielsen et al. 2014',
    caveat: 'human; the progression result is second hand',
  },
  frandsen2025: {
    reference:
      'Frandsen JSB et al. 2025. Br J Sports Med 59:1203-1210: overuse injury after single sessions longer than the longest of the last 30 days, 5,205 runners.',
    short: 'Frandsen et al. 2025',
    caveat: 'human; abstract read',
  },
  buist2008: {
    reference:
      'Buist I et al. 2008: randomised trial of a graded programme (10 % rule) in novice runners.',
    short: 'Buist et al. 2008',
    caveat: 'human',
  },
  trials2023: {
    reference: 'Trials, 2023: protocol of a military return-to-running trial, stage table.',
    short: 'Trials 2023',
    caveat: 'human',
  },
  zinkVanDyke: {
    reference: 'Zink C, Van Dyke JB (eds). Canine Sports Medicine and Rehabilitation.',
    short: 'Zink & Van Dyke',
  },
  sorenessRules: {
    reference: 'Soreness rules from human throwing and running rehabilitation.',
    short: 'Soreness rules',
    caveat: 'human; from memory',
  },
  hall2022: {
    reference: 'Hall EJ et al. Vet Sci 2022;9:231.',
    short: 'Hall et al. 2022',
  },
  carterHall2018: {
    reference: 'Carter AJ, Hall EJ. J Therm Biol 2018;72:33.',
    short: 'Carter & Hall 2018',
  },
  raceLimits: {
    reference: 'Temperature limits of harness racing rules for fit dogs, about 25 °C.',
    short: 'Race limits',
    caveat: 'second hand',
  },
  noaaHeatIndex: {
    reference:
      'Rothfusz LP. The heat index equation. National Weather Service SR 90-23, with the agency’s adjustments and table.',
    short: 'NOAA heat index',
  },
  stull2011: {
    reference:
      'Stull R. J Appl Meteorol Climatol 2011;50:2267: wet bulb from humidity and temperature.',
    short: 'Stull 2011',
  },
  higginsIampietro: {
    reference:
      'Higgins, Iampietro: rise of the rectal temperature in 45 dogs, faster in humid air.',
    short: 'Higgins & Iampietro',
    caveat: 'abstract only',
  },
  magnus: {
    reference: 'Magnus form of the saturation vapour pressure, coefficients 17.625 and 243.04 °C.',
    short: 'Magnus formula',
  },
  berens1970: {
    reference: 'Berens 1970: asphalt against air temperature.',
    short: 'Berens 1970',
    caveat: 'as quoted',
  },
  heatFirstAid: {
    reference: 'Hall EJ et al., VetCompass: cool first, transport second.',
    short: 'Cool first, transport second',
  },
  kano2016: { reference: 'Kano et al. 2016.', short: 'Kano 2016' },
  froudeGaits: {
    reference:
      'Dynamic similarity of gaits: walk to trot near Froude 0.5, trot to gallop about 2–3.',
    short: 'Dynamic similarity',
    caveat: 'from memory',
  },
  lamenessScales: {
    reference: 'Canine Lameness: no canine lameness grading scale is validated.',
    short: 'Canine Lameness',
  },
  jaegger2002: {
    reference: 'Jaegger G et al. Am J Vet Res 2002;63:979.',
    short: 'Jaegger et al. 2002',
  },
  jaegger2002Hind: {
    reference: 'Jaegger G et al. Am J Vet Res 2002;63:979: hind limb values.',
    short: 'Jaegger et al. 2002, hind limb',
    caveat: 'from memory',
  },
  bascunan2016: { reference: 'Bascunan et al. 2016: thigh girth.', short: 'Bascunan et al. 2016' },
  hyytiainen2012: {
    reference: 'Hyytiäinen et al. 2012: static weight bearing on bathroom scales.',
    short: 'Hyytiäinen et al. 2012',
  },
  standingShare: {
    reference: 'Standing weight distribution of dogs: fore share 60.4 ± 4.8 %.',
    short: 'Standing weight distribution',
  },
  hildebrand: {
    reference: 'Hildebrand M: classification of symmetrical gaits.',
    short: 'Hildebrand',
    caveat: 'from memory',
  },
  pipan2012: { reference: 'Pipan M et al. 2012.', short: 'Pipan et al. 2012' },
  lafuente2019: {
    reference: 'Lafuente P et al. Vet Rec 2019;184:64.',
    short: 'Lafuente et al. 2019',
  },
  wilson1927: {
    reference:
      'Wilson EB. Probable inference, the law of succession, and statistical inference. J Am Stat Assoc 1927;22:209–212.',
    short: 'Wilson 1927',
  },
  newcombe1998: {
    reference:
      'Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Stat Med 1998;17:857–872.',
    short: 'Newcombe 1998',
  },
  alvesInnes2023: {
    reference:
      'Alves JC, Innes JF. Minimal clinically-important differences for the LOAD and the Canine Orthopedic Index (COI) in dogs with osteoarthritis. PLoS ONE 2023;18(9):e0291881.',
    short: 'Alves & Innes 2023',
  },
  commonPractice: {
    reference: 'Common practice of the trade; no published source.',
    short: 'Common practice',
  },
  ownDecision: {
    reference: 'Our own cautious choice where no figure is published; editable in the settings.',
    short: 'Our own choice',
  },
  practiceSetting: {
    reference: 'Set by the practice in its own rules, inside the range the program allows.',
    short: 'Set by the practice',
  },
  arithmetic: { reference: 'Arithmetic from the stated formula.', short: 'Arithmetic' },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;

/**
 * The source behind an id.
 * @example source('hand2010').short // => 'Hand et al. 2010'
 */
export function source(id: SourceId): Source {
  return SOURCES[id];
}
