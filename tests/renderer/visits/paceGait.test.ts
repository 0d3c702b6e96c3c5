import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import PaceGait from '../../../renderer/visits/PaceGait.vue';
import { appPlugins } from '../support/plugins.ts';

interface Props {
  readonly paceMinPerKm: number;
  readonly withersCm: number | null;
}
const mounted = (props: Props) => mount(PaceGait, { props, global: { plugins: appPlugins() } });
const text = (props: Props) => mounted(props).text().replaceAll(/\s+/g, ' ');

describe('the pace beside the dog', () => {
  it('asks for the height while it is not known', () => {
    expect(text({ paceMinPerKm: 6, withersCm: null })).toContain('height at the withers');
  });

  // Froude = v² / (g h) (dynamic similarity, M): 6 min/km = 2.778 m/s; 0.5 m → 1.57, 0.25 m → 3.15.
  // Trot to canter at about 2 to 3 (M).
  it('lets a middling dog trot and a small one canter at the same pace', () => {
    expect(text({ paceMinPerKm: 6, withersCm: 50 })).toMatch(/likely a trot.*Froude number 1\.57/);
    expect(text({ paceMinPerKm: 6, withersCm: 25 })).toMatch(/already a canter.*3\.15/);
  });

  // √(2 g h) = 3.132 m/s = 5:19 min/km, √(3 g h) = 3.836 m/s = 4:21 min/km at 0.5 m (C).
  it('gives the pace at which dogs of its height leave the trot as a range', () => {
    expect(text({ paceMinPerKm: 6, withersCm: 50 })).toContain('5:19 to 4:21 min/km');
  });

  it('says where the owner’s pace is faster than all of that, and proposes the slow end', async () => {
    expect(text({ paceMinPerKm: 5, withersCm: 50 })).not.toContain('faster than all of that');
    const wrapper = mounted({ paceMinPerKm: 4, withersCm: 50 });
    expect(wrapper.text()).toContain('faster than all of that');
    await wrapper.get('button.slim').trigger('click');
    expect(wrapper.emitted('slower')![0]![0]).toBeCloseTo(5.32, 1);
  });
});
