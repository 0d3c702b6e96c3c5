import type { Visit } from '../../../electron/contract/contract.ts';
import type { Shown } from '../../units/shown.ts';
import { KIND_WORDS } from '../../words.ts';

/** What a visit is called among the others of its dog: "Follow-up, 02.03.2026". */
export const headOfVisit = ({ kind, day }: Visit, shown: Shown): string =>
  `${KIND_WORDS[kind]}, ${shown.day(day)}`;

/** Where two visits of a dog stand side by side. */
export const besidePath = (dogId: string, visitId: string, besideId: string): string =>
  `/dogs/${dogId}/visits/${visitId}/beside/${besideId}`;
