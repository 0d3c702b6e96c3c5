import { watchEffect } from 'vue';

/** Keeps the window's title in step with the page. */
export function usePageTitle(title: () => string): void {
  watchEffect(() => {
    const text = title();
    document.title = text === '' ? 'Trotwell' : `${text} · Trotwell`;
  });
}
