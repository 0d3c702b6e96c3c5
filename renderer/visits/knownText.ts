import type { VisitEntry } from './visitForm.ts';
import { INJURY_WORDS } from '../words.ts';

type Known = Pick<
  VisitEntry,
  'surgery' | 'injuries' | 'airwayDisease' | 'disease' | 'medicine' | 'heatIllness'
>;

const ORGANS = ['joints', 'spine', 'heart'] as const;

/** What is known of surgery, injury, disease, medicine and heat, in short; empty while nothing is. */
export function knownText(visit: Known): string {
  const { surgery, injuries, airwayDisease, disease, medicine, heatIllness } = visit;
  const ill = ORGANS.filter((organ) => disease[organ] === 'yes');
  return [
    surgery === 'none' ? '' : `Surgery ${surgery}`,
    ...injuries.map(({ kind, structure }) => `${INJURY_WORDS[kind]}: ${structure || '–'}`),
    airwayDisease ? 'Airway disease' : '',
    ill.length === 0 ? disease.words : `Disease of ${ill.join(', ')}`,
    medicine === '' ? '' : `Medicine: ${medicine}`,
    heatIllness.had === 'yes' ? 'Heat illness before' : '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** "Nothing known" answers the questions of disease and heat as well; taken back, nobody asked. */
export function answerNo({ disease, heatIllness }: Known, isNo: boolean): void {
  const answer = isNo ? 'no' : null;
  for (const organ of ORGANS) disease[organ] = answer;
  heatIllness.had = answer;
}
