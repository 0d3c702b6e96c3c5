import { onBeforeUnmount, onMounted, ref, type Ref } from 'vue';

const NARROWEST = 280;

/**
 * The width a drawing has, in CSS pixels, so that its text is never scaled. While it is out of sight
 * it keeps the last one.
 */
export function useWidth(element: Readonly<Ref<HTMLElement | null>>, first = 640): Ref<number> {
  const width = ref(first);
  let observer: ResizeObserver | undefined;
  onMounted(() => {
    observer = new ResizeObserver(([entry]) => {
      const now = Math.round(entry?.contentRect.width ?? 0);
      if (now > 0) width.value = Math.max(NARROWEST, now);
    });
    if (element.value !== null) observer.observe(element.value);
  });
  onBeforeUnmount(() => observer?.disconnect());
  return width;
}
