import { addDays, addMonths } from '../../../core/day.ts';
import { blankPlanRequest, blankVisit } from '../../contract/records/forms.ts';
import type { Plan, SavedVisit } from '../../contract/contract.ts';
import type { VisitFacts } from '../../contract/records.ts';
import { clientHandlers } from '../dogs/clients.ts';
import type { Context } from '../database/context.ts';
import { dogHandlers } from '../dogs/dogs.ts';
import { practiceHandlers } from '../practice/practice.ts';
import { sessionHandlers } from '../plans/sessions.ts';
import { shelfHandlers } from '../food/shelf.ts';
import { visitHandlers } from '../visits/visits.ts';
import {
  DEMO_DOGS,
  DEMO_FOODS,
  DEMO_OWNERS,
  DEMO_PHRASES,
  DEMO_PRACTICE,
  type DemoDog,
  type DemoVisit,
} from './scenario.ts';

/** Fills a new file with the invented practice, through the same handlers a practitioner uses. */
export async function seedDemo(context: Context): Promise<void> {
  await practiceHandlers['practice/save'](context, DEMO_PRACTICE);
  for (const food of DEMO_FOODS) await shelfHandlers['shelf/keepFood'](context, { id: null, food });
  for (const text of DEMO_PHRASES)
    await shelfHandlers['shelf/keepPhrase'](context, { id: null, text });
  const ownerIds: string[] = [];
  for (const client of DEMO_OWNERS) {
    const saved = await clientHandlers['clients/save'](context, { id: null, client });
    ownerIds.push(saved.id);
  }
  for (const entry of DEMO_DOGS) await seedDog(context, ownerIds[entry.owner]!, entry);
}

async function seedDog(context: Context, clientId: string, entry: DemoDog): Promise<void> {
  const birthDay = addMonths(context.today(), -entry.ageMonths);
  const dog = await dogHandlers['dogs/save'](context, {
    id: null,
    dog: { ...entry.dog, clientId, birthDay },
  });
  let previous: SavedVisit | undefined;
  for (const visit of entry.visits) {
    previous = await seedVisit(context, dog.id, visit, previous);
    if (previous.plan !== null) await seedSessions(context, previous.plan, entry.silentDays ?? 0);
  }
}

/** What the owner tells of the sessions so far: one missed, one shortened, the others done. */
async function seedSessions(context: Context, plan: Plan, silentDays: number): Promise<void> {
  const told = addDays(context.today(), -silentDays);
  const past = plan.ramp.weeks.flatMap(({ sessions }) => sessions).filter(({ day }) => day < told);
  for (const [index, { day, runMinutes }] of past.entries()) {
    const outcome = index === MISSED ? 'missed' : index === SHORTENED ? 'shortened' : 'done';
    await sessionHandlers['sessions/save'](context, {
      dogId: plan.dogId,
      session: {
        day,
        outcome,
        runMinutes: outcome === 'shortened' ? runMinutes / 2 : null,
        longestRunMinutes: null,
        runKm: null,
        climbedM: null,
        nextDay: outcome === 'missed' ? null : 'normal',
        signs: [],
        note: '',
      },
    });
  }
}

const MISSED = 5;
const SHORTENED = 8;

async function seedVisit(
  context: Context,
  dogId: string,
  entry: DemoVisit,
  previous: SavedVisit | undefined,
): Promise<SavedVisit> {
  const day = addDays(context.today(), -entry.daysAgo);
  const facts: VisitFacts = {
    ...blankVisit(dogId, day, previous?.visit, previous?.foodDecision ?? null),
    ...entry.facts,
  };
  if (entry.consentDaysAgo !== undefined) {
    const consentDay = addDays(context.today(), -entry.consentDaysAgo);
    facts.consent = { ...facts.consent, day: consentDay, expiryDay: addMonths(consentDay, 12) };
  }
  const plan =
    entry.plan === undefined
      ? null
      : {
          ...blankPlanRequest(addDays(day, entry.plan.startInDays), entry.plan.start),
          goal: entry.plan.goal,
        };
  return visitHandlers['visits/save'](context, {
    id: null,
    visit: facts,
    plan,
    food: entry.food ?? null,
  });
}
