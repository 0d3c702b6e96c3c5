import { shallowRef, type ShallowRef } from 'vue';

/** The least that is left in sight, in days or counts. */
const NARROWEST = 7;

/**
 * The part of the x axis in sight, moved by wheel, drag, pinch and keys. Null while all is in sight,
 * as it is at first.
 */
export interface Sight {
  readonly window: ShallowRef<readonly [number, number] | null>;
  /** Closer with a factor below 1, about a share of the width (0 left, 1 right). */
  zoom(factor: number, about?: number): void;
  /** Along by a share of what is in sight. */
  pan(share: number): void;
  all(): void;
}

export function useSight(whole: () => readonly [number, number]): Sight {
  const window = shallowRef<readonly [number, number] | null>(null);
  function set(from: number, length: number): void {
    const [first, last] = whole();
    if (length >= last - first) {
      window.value = null;
      return;
    }
    const start = Math.min(Math.max(from, first), last - length);
    window.value = [start, start + length];
  }
  const now = () => window.value ?? whole();
  return {
    window,
    zoom(factor, about = 0.5) {
      const [from, to] = now();
      const length = Math.max(NARROWEST, (to - from) * factor);
      set(from + (to - from - length) * about, length);
    },
    pan(share) {
      const [from, to] = now();
      set(from + share * (to - from), to - from);
    },
    all: () => (window.value = null),
  };
}
