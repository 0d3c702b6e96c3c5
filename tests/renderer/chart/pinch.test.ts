import { describe, expect, it } from 'vitest';
import { ref } from 'vue';
import { mount } from '@vue/test-utils';
import { usePointer } from '../../../renderer/chart/usePointer.ts';
import type { Sight } from '../../../renderer/chart/useSight.ts';

/** A pointer's event as far as a chart looks at it. */
const at = (pointerId: number, clientX: number) => ({ pointerId, clientX }) as PointerEvent;

function charted() {
  const done: string[] = [];
  const sight = {
    window: ref([0, 10] as const),
    zoom: (by: number) => done.push(`zoom ${by.toFixed(2)}`),
    pan: (by: number) => done.push(by > 0 ? 'on' : 'back'),
  } as unknown as Sight;
  let pointer!: ReturnType<typeof usePointer>;
  mount({
    setup() {
      pointer = usePointer(ref(document.createElement('div')), sight);
      return () => null;
    },
  });
  return { done, pointer };
}

describe('fingers on a chart', () => {
  it('come closer when two part, and go back when they close', () => {
    const { done, pointer } = charted();
    pointer.pointerdown(at(1, 100));
    pointer.pointerdown(at(2, 200));
    pointer.pointermove(at(2, 300));
    pointer.pointermove(at(2, 200));
    expect(done).toEqual(['zoom 0.50', 'zoom 2.00']);
  });

  it('go along when there is one, and do nothing once they are up', () => {
    const { done, pointer } = charted();
    pointer.pointerdown(at(1, 100));
    pointer.pointermove(at(1, 60));
    pointer.pointerup(at(1, 60));
    pointer.pointermove(at(1, 20));
    expect(done).toEqual(['on']);
  });
});
