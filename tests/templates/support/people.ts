import { heatTable } from '../../../core/index.ts';
import type { Findings, HandoutContext, Logo, PracticePrint } from '../../../templates/index.ts';
import type { Paper } from '../../../templates/theme.ts';

// An invented practice, owner and dog. Nobody of these names is meant.

export const practice: PracticePrint = {
  name: 'Hazel Lane Canine Movement',
  practitioner: 'Ines Marlow, veterinary physiotherapist',
  address: '4 Hazel Lane\nExampletown EX1 2AB',
  phone: '+00 555 0100',
  email: 'desk@hazel-lane.example',
  registration: 'Invented register no. 0000',
  weightUnit: 'kg',
  energyUnit: 'kcal',
  distanceUnit: 'km',
  temperatureUnit: 'C',
  paper: 'A4',
  dayFormat: 'DD/MM/YYYY',
};

/** The same practice across the ocean: Letter paper, pounds, miles, degrees Fahrenheit. */
const letterUnits = {
  weightUnit: 'lb',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
  dayFormat: 'MM/DD/YYYY',
} as const;

export const dog: HandoutContext['dog'] = {
  name: 'Bramble',
  breed: 'Crossbreed',
  sex: 'female',
  neuter: 'neutered',
  birthDay: '2021-03-03',
  withersCm: 55,
  chip: '999000000000017',
};

export const owner: HandoutContext['owner'] = {
  name: 'Dana Rook',
  phone: '+00 555 0111',
  email: 'dana@rook.example',
  vetPractice: 'Millpond Veterinary Practice',
  vetName: 'Dr Aldo Fenn',
  vetContact: 'reception@millpond.example',
};

export function context(paper: Paper, changes: Partial<HandoutContext> = {}): HandoutContext {
  const units = paper === 'LETTER' ? letterUnits : {};
  return {
    practice: { ...practice, ...units, paper },
    dog,
    owner,
    day: '2025-12-01',
    printedOn: '2025-12-03',
    demo: true,
    ...changes,
  };
}

export const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 } as const;
export const unseen = { leftFore: null, rightFore: null, leftHind: null, rightHind: null } as const;

export const findings: Findings = {
  day: '2025-12-01',
  weightKg: 24.2,
  weighedOn: null,
  bcs: 6,
  muscle: 'mild loss',
  lamenessWalk: sound,
  lamenessTrot: { ...sound, leftHind: 1 },
  gaitNote: 'Short step on the left hind when turning; even after ten minutes.',
  targetWeightKg: 22,
  consent: {
    given: true,
    vet: 'Dr Aldo Fenn',
    day: '2025-11-20',
    scope: 'graded exercise',
    expiryDay: '2026-05-20',
  },
};
export const SET_ASIDE = [
  { code: 'lameness-trot', reason: 'Seen by the vet on 20 November: old, mild, no pain.' },
];

/** Nothing was looked at and nothing was typed. */
export const emptyFindings: Findings = {
  day: '2025-12-01',
  weightKg: null,
  weighedOn: null,
  bcs: null,
  muscle: null,
  lamenessWalk: unseen,
  lamenessTrot: unseen,
  gaitNote: '',
  targetWeightKg: null,
  consent: { given: false, vet: '', day: null, scope: '', expiryDay: null },
};

/** A practice, owner and dog whose every text is as long as the records allow. */
export function longNames(paper: Paper): HandoutContext {
  const base = context(paper);
  return {
    ...base,
    demo: false,
    practice: {
      ...base.practice,
      name: 'Centre for Movement, Rehabilitation and Conditioning of Working and Companion Dogs of the Upper and Lower Exampleshire Valleys',
      practitioner:
        'Maximiliana Featherstonehaugh-Montgomery, chartered veterinary physiotherapist',
      address:
        'The Old Coach House\n114 Lower Northumberland Crescent\nGreat Exampleford upon Water\nEX10 20XE',
      email: 'reception-and-appointments@a-very-long-name-for-a-practice.example',
      registration: 'Invented registration text. '.repeat(30).trim(),
      footer: 'Please ring two days ahead if you cannot come. '.repeat(4).trim(),
    },
    dog: {
      ...base.dog,
      name: 'Lady Philippa Wolkenstein-Sonnenblumenfeld vom Hohen Walde "Pippa"',
      breed: 'Crossbreed of a long-haired herding dog and a smooth-haired pointing dog',
    },
    owner: { ...base.owner, name: 'Bartholomew Christopher Featherstonehaugh-Montgomery' },
  };
}

/** The practice with a logo, an accent too pale to read and a footer of its own; no demonstration. */
export function branded(paper: Paper, logo: Logo): HandoutContext {
  const base = context(paper);
  return {
    ...base,
    demo: false,
    practice: { ...base.practice, logo, accent: '#e08a3c', footer: 'Appointments by phone' },
  };
}

/** Heavy for its frame and with a thick coat: both move the heat limits down. */
export const warmDog = heatTable({ dog: { bcs: 6, weightKg: 24.2, coat: 'thick' } });
export const hardyDog = heatTable();
/** Short-nosed without clearance: no running at any temperature. */
export const shortNosedDog = heatTable({ dog: { shortNosed: true, cleared: false } });
/** A small senior in its first warm days: half from caution on, and a coat in the cold. */
export const firstWarmth = heatTable({
  dog: { weightKg: 6, senior: true, acclimatised: false },
});
