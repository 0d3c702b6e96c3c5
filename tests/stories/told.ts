import { expect } from 'vitest';
import {
  kjFromKcal,
  lbFromKg,
  shownWeekMinutes,
  underWay,
  weighOut,
  type PresentState,
} from '../../core/index.ts';
import type { FoodDecision, Plan } from '../../electron/contract/contract.ts';
import type { Practice } from '../../electron/contract/records.ts';

/**
 * What a surface says of a dog, as far as it is there to say it: null says that there is none, and
 * undefined that nothing was found where it had to be told. Amounts are the text that is read, in the
 * practice's units; days are ISO days.
 */
export interface Told {
  readonly outcome?: string | undefined;
  /** "held" is waiting or stopped: no outing is announced, and something is asked for first. */
  readonly programme?: 'none' | 'running' | 'walking' | 'held' | 'finished' | undefined;
  readonly week?: number | null | undefined;
  readonly lastWeek?: number | null | undefined;
  readonly nextOuting?: string | null | undefined;
  /** Of the week of today. */
  readonly runMinutes?: number | null | undefined;
  readonly kcal?: string | null | undefined;
  /** Of each food by name, treats too. */
  readonly grams?: Readonly<Record<string, number>> | null | undefined;
  readonly weight?: string | undefined;
  readonly target?: string | null | undefined;
  readonly goalDay?: string | null | undefined;
  readonly nextWeighIn?: string | null | undefined;
  readonly condition?: number | null | undefined;
  /** The code of what the weight is off its course by. */
  readonly offCourse?: string | null | undefined;
  readonly gaining?: boolean | undefined;
  /** Whatever the plan waits for. */
  readonly lastOuting?: string | null | undefined;
  readonly consent?: boolean | undefined;
  readonly consentEnds?: string | null | undefined;
}

/** All of it, as it stands. */
export type Stands = { readonly [K in keyof Told]-?: Exclude<Told[K], undefined> };

export type Units = Pick<Practice, 'weightUnit' | 'energyUnit' | 'dayFormat'>;

export function energyText(kcal: number, { energyUnit }: Units): string {
  const amount = Math.round(energyUnit === 'kJ' ? kjFromKcal(kcal) : kcal);
  return `${amount.toLocaleString('en')} ${energyUnit}`;
}

export const weightText = (kg: number, { weightUnit }: Units): string =>
  `${(weightUnit === 'lb' ? lbFromKg(kg) : kg).toFixed(1)} ${weightUnit}`;

/** What the surfaces tell apart of a programme. */
export const PROGRAMME = {
  none: 'none',
  running: 'running',
  walking: 'walking',
  waiting: 'held',
  stopped: 'held',
  finished: 'finished',
} as const;

/** What every surface has to say of a dog that stands there. */
export function toldBy(state: PresentState<Plan, FoodDecision>, units: Units): Stands {
  const { programme, ration, targetKg } = state;
  const going = underWay(programme);
  const week = going?.week ?? null;
  return {
    outcome: state.mayRun,
    programme: PROGRAMME[programme.kind],
    week: week?.number ?? null,
    lastWeek: going?.lastWeek ?? null,
    nextOuting: going?.next?.day ?? null,
    runMinutes: week === null ? null : shownWeekMinutes(week),
    kcal: ration === null ? null : energyText(ration.kcalPerDay, units),
    grams:
      ration?.ration == null
        ? null
        : Object.fromEntries(
            weighOut(ration.ration).items.map(({ name, gramsPerDay }) => [name, gramsPerDay]),
          ),
    weight: weightText(state.weight.kg, units),
    target: targetKg === null ? null : weightText(targetKg, units),
    goalDay: state.goal?.day ?? null,
    nextWeighIn: state.due.find(({ what }) => what === 'weigh')?.day ?? null,
    condition: state.bcs,
    offCourse: state.offCourse?.code ?? null,
    gaining: state.gaining,
    lastOuting: state.planEndsOn,
    consent: state.consent.inForce,
    consentEnds: state.consent.endsOn,
  };
}

/** Where a surface and the state disagree: a sentence for each, naming both places. */
function disagreements(place: string, said: Told, stands: Stands): string[] {
  return (Object.keys(said) as (keyof Told)[]).flatMap((what) => {
    if (said[what] === undefined && stands[what] === null) return [];
    const there = JSON.stringify(stands[what]);
    const here = said[what] === undefined ? 'nothing' : JSON.stringify(said[what]);
    return here === there ? [] : [`${place} says ${what} ${here}; presentState says ${there}`];
  });
}

/** Fails with every disagreement of a story at once. */
export function expectOneStory(said: ReadonlyMap<string, Told>, stands: Stands): void {
  expect([...said].flatMap(([place, told]) => disagreements(place, told, stands))).toEqual([]);
}
