import { watchEffect } from 'vue';
import { useTitleNames } from '../stores/titleNames.ts';

/**
 * Keeps the window's title in step with the page.
 * @param title without a name in it
 * @param named the same with the dog's name, where titles may name it; null while it is not known
 */
export function usePageTitle(title: () => string, named: () => string | null = () => null): void {
  const names = useTitleNames();
  watchEffect(() => {
    const text = (names.shown ? named() : null) ?? title();
    document.title = text === '' ? 'Trotwell' : `${text} · Trotwell`;
  });
}
