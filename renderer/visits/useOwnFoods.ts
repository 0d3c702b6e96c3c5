import { computed } from 'vue';
import { folded, type OwnFood } from '../../electron/contract/food/shelf.ts';
import { useClient } from '../api/client.ts';
import { useNotice } from '../stores/notice.ts';
import { useShelf } from '../stores/shelf.ts';
import type { DietEntry } from './visitForm.ts';

type Typed = Pick<DietEntry, 'name' | 'treat' | 'kcalPer100g'>;

const kindOf = (treat: boolean): OwnFood['kind'] => (treat ? 'treat' : 'food');

/** The foods of the practice, beside what is typed into a food table. */
export function useOwnFoods() {
  const client = useClient();
  const shelf = useShelf();
  const notice = useNotice();
  const foods = computed(() => shelf.foods.filter(({ kind }) => kind === 'food'));
  const treats = computed(() => shelf.foods.filter(({ kind }) => kind === 'treat'));

  const ofName = ({ name, treat }: Typed) =>
    (treat ? treats : foods).value.find((own) => folded(own.name) === folded(name));

  return {
    foods,
    treats,
    /** True for a food of the practice's own name and energy missing from what it keeps. */
    canBeKept(typed: Typed): boolean {
      const { name, kcalPer100g } = typed;
      if (name.trim() === '' || kcalPer100g === null) return false;
      return ofName(typed)?.kcalPer100g !== kcalPer100g;
    },
    /** Keeps it for the next dog; one of that name gets the energy that is typed now. */
    async keep(typed: Typed): Promise<void> {
      const { name, treat, kcalPer100g } = typed;
      if (kcalPer100g === null) return;
      const answer = await client.call('shelf/keepFood', {
        id: ofName(typed)?.id ?? null,
        food: { name, kind: kindOf(treat), kcalPer100g },
      });
      if (answer.ok) shelf.keep(answer.value);
      notice.say(answer.ok ? `${name.trim()} is kept.` : answer.error.message);
    },
  };
}
