import { onBeforeUnmount } from 'vue';
import { useRouter, type RouteLocationRaw } from 'vue-router';

/**
 * Takes the practitioner on to a page once something is done, such as a save, unless they set out
 * for another page while it ran: where they went themselves goes before where the form would lead.
 */
export function useOnward(): (to: RouteLocationRaw) => Promise<void> {
  const router = useRouter();
  let left = false;
  // A page is left from the moment another is asked for: its code may still be on its way.
  const unguard = router.beforeEach((to, from) => {
    if (to.path !== from.path) left = true;
  });
  const unwatch = router.afterEach((_to, _from, failure) => {
    if (failure !== undefined) left = false;
  });
  onBeforeUnmount(() => {
    left = true;
    unguard();
    unwatch();
  });
  return async (to) => {
    if (!left) await router.push(to);
  };
}
