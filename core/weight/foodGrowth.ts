import { maintenanceEnergy } from '../energy/maintenance.ts';
import type { Estimate } from '../figure.ts';
import { OWN } from '../origin.ts';
import { because, runningReasons, type FoodDraft } from './foodDraft.ts';
import type { AdjustFoodInput, FoodCase } from './foodTypes.ts';

/** A ration this close to the growth energy is left as it is, % (D). */
const CLOSE_PERCENT = 5;

/** The energy of a growing dog; null without its expected adult weight. */
export function growthOf(input: AdjustFoodInput): Estimate | null {
  const { weightKg, adultWeightKg, maintenance } = input;
  if (adultWeightKg !== undefined) {
    return maintenanceEnergy({ weightKg, lifeStage: 'puppy', adultWeightKg });
  }
  return maintenance?.figure.id === 'growthEnergy' ? maintenance : null;
}

/**
 * The ration of a growing dog: the growth energy alone. Its weight has to rise, so no trend and no
 * balance of its record is followed. A ration that suits is kept: in ideal condition any inside the
 * range of the estimate (D); a heavy dog keeps what lies below the middle of it, and a thin one gets
 * no less than it eats, whatever that is.
 */
export function feedGrowth(input: FoodCase, growth: Estimate): FoodDraft {
  const { currentKcal: present = 0, runningKcalPerDay: running = 0, bcs, onPlan } = input;
  const asked = growth.mid + running;
  const suits = present >= growth.low + running && present <= growth.high + running;
  const kcalPerDay = suits ? suited(asked, present, bcs) : stepped(asked, present, bcs);
  const same = present > 0 && Math.abs(kcalPerDay / present - 1) < CLOSE_PERCENT / 100;
  const { evidence, mark, sources } = growth.figure;
  const energy = Math.round(growth.mid);
  const text = `A growing dog is fed for growth, about {${energy} kcal} a day ({${Math.round(growth.low)} to ${Math.round(growth.high)} kcal}): its weight has to rise.`;
  return {
    verdict: onPlan !== true ? 'start' : same ? 'keep' : 'change',
    kcalPerDay: onPlan === true && same ? present : kcalPerDay,
    reasons: [
      because('growth-food', text, { evidence, mark, sources }, { kcal: energy }),
      ...runningReasons(running),
    ],
    formula:
      suits && kcalPerDay === present
        ? { formula: 'present ration, inside the range of the growth energy', ...OWN }
        : { formula: growth.figure.formula, evidence, mark, sources },
  };
}

/**
 * In ideal condition the ration moves by a tenth at most, from weighing to weighing; that of a heavy
 * dog goes up no faster (D).
 */
function stepped(asked: number, present: number, bcs: number | undefined): number {
  if (present <= 0 || bcs === undefined) return asked;
  if (bcs <= 3) return Math.max(asked, present);
  return Math.min(1.1 * present, bcs >= 6 ? asked : Math.max(0.9 * present, asked));
}

function suited(asked: number, present: number, bcs: number | undefined): number {
  if (bcs === undefined) return asked;
  if (bcs <= 3) return Math.max(asked, present);
  return bcs <= 5 ? present : Math.min(asked, present);
}
