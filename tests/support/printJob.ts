import { fileURLToPath } from 'node:url';
import type { PrintJob } from '../../electron/service/handouts/print.ts';

const context: PrintJob['context'] = {
  practice: {
    name: 'Invented practice',
    practitioner: '',
    address: '',
    phone: '',
    email: '',
    registration: '',
    weightUnit: 'kg',
    energyUnit: 'kcal',
    distanceUnit: 'km',
    temperatureUnit: 'C',
    paper: 'A4',
    dayFormat: 'YYYY-MM-DD',
  },
  dog: {
    name: 'Bramble',
    breed: '',
    sex: 'female',
    neuter: 'neutered',
    birthDay: '2022-01-01',
    withersCm: null,
    chip: '',
  },
  owner: { name: 'Sample', phone: '', email: '', vetPractice: '', vetName: '', vetContact: '' },
  day: '2026-03-02',
  printedOn: '2026-03-02',
  demo: true,
};

/** The shortest print there is: one sheet of an invented practice. */
export const KIT_SHEET: PrintJob = {
  context,
  sheets: [{ kind: 'kit-sheet', data: context }],
  language: 'en',
  fontsFolder: fileURLToPath(new URL('../../templates/fonts', import.meta.url)),
  instant: new Date('2026-03-02T12:00:00Z'),
};
