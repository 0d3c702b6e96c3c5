import type { ClientInput, DogInput, SessionInput, VisitFacts } from '../records.ts';
import { only } from './blank.ts';
import { CLIENT } from './client.ts';
import { DOG } from './dog.ts';
import { SESSION } from './session.ts';
import { VISIT } from './visit.ts';
import { WEIGHING } from './weighing.ts';
import type { WeighingInput } from '../weighings/weighing.ts';

// The part of a record that was entered, of anything that holds it, such as a stored one.

export const visitFactsOf = (visit: VisitFacts): VisitFacts => only(VISIT, visit);
export const dogFactsOf = (dog: DogInput): DogInput => only(DOG, dog);
export const clientFactsOf = (client: ClientInput): ClientInput => only(CLIENT, client);
export const sessionFactsOf = (session: SessionInput): SessionInput => only(SESSION, session);
export const weighingFactsOf = (weighing: WeighingInput): WeighingInput => only(WEIGHING, weighing);
