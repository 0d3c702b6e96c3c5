import { onBeforeUnmount, onMounted, type Ref } from 'vue';
import type { Sight } from './useSight.ts';

/** A wheel's step, in pixels, that halves or doubles what is in sight. */
const WHEEL_DOUBLES = 500;

/**
 * Drag goes along, two fingers come closer. The wheel comes closer while the chart has the focus or
 * Ctrl is held; else it scrolls the page, as everywhere.
 */
export function usePointer(box: Readonly<Ref<HTMLElement | null>>, sight: Sight) {
  const down = new Map<number, number>();

  const width = () => box.value?.clientWidth || 1;
  const left = () => box.value?.getBoundingClientRect().left ?? 0;

  function wheel(event: WheelEvent): void {
    const wanted = event.ctrlKey || document.activeElement === box.value;
    if (!wanted) return;
    event.preventDefault();
    if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) sight.pan(event.deltaX / width());
    else sight.zoom(2 ** (event.deltaY / WHEEL_DOUBLES), (event.clientX - left()) / width());
  }
  // Vue adds wheel listeners as passive ones; this one keeps the page where it is.
  onMounted(() => box.value?.addEventListener('wheel', wheel, { passive: false }));
  onBeforeUnmount(() => box.value?.removeEventListener('wheel', wheel));

  function move(event: PointerEvent): void {
    const before = down.get(event.pointerId);
    if (before === undefined) return;
    const others = [...down].filter(([pointer]) => pointer !== event.pointerId);
    down.set(event.pointerId, event.clientX);
    const other = others[0]?.[1];
    if (other === undefined) {
      if (sight.window.value !== null) sight.pan((before - event.clientX) / width());
      return;
    }
    const [then, now] = [Math.abs(before - other), Math.abs(event.clientX - other)];
    if (then > 0 && now > 0) {
      sight.zoom(then / now, ((event.clientX + other) / 2 - left()) / width());
    }
  }
  const up = (event: PointerEvent): void => void down.delete(event.pointerId);
  return {
    pointerdown: (event: PointerEvent): void => void down.set(event.pointerId, event.clientX),
    pointermove: move,
    pointerup: up,
    pointercancel: up,
    pointerleave: up,
  };
}
