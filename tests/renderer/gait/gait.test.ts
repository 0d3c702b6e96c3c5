import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import type { Visit } from '../../../electron/contract/contract.ts';
import type { Footfall, Measurement } from '../../../electron/contract/records.ts';
import { readTimes, withContact, withTimes } from '../../../renderer/gait/footfallEntry.ts';
import { judge } from '../../../renderer/gait/judge.ts';
import { lastMeasured, withValue } from '../../../renderer/gait/measureEntry.ts';
import TapPad from '../../../renderer/gait/TapPad.vue';
import TimingResult from '../../../renderer/gait/TimingResult.vue';
import { measurementTrends, symmetryTrends } from '../../../renderer/gait/trends.ts';
import { appPlugins } from '../support/plugins.ts';

const stifle = (value: number, limb: Measurement['limb'] = 'leftHind'): Measurement => ({
  kind: 'joint angle',
  joint: 'stifle',
  movement: 'flexion',
  limb,
  value,
  note: '',
});
const visit = (day: string, measurements: Measurement[]): Visit => ({
  ...blankVisit('d', day),
  id: day,
  createdAt: '',
  updatedAt: '',
  revision: 1,
  author: '',
  measurements,
});

describe('measurements of a visit', () => {
  it('are set and taken out one by one', () => {
    const one = withValue([], stifle(0), 45);
    expect(one).toEqual([stifle(45)]);
    expect(withValue(one, stifle(0), 47)).toEqual([stifle(47)]);
    expect(withValue(one, stifle(0), null)).toEqual([]);
  });
  it('are compared with the last time each was taken, not with the visit itself', () => {
    const visits = [visit('2025-01-01', [stifle(50)]), visit('2025-02-01', [stifle(45)])];
    expect(lastMeasured(visits, '2025-02-01', '2025-02-01')).toEqual([stifle(50)]);
    expect(lastMeasured(visits, '2025-03-01')).toEqual([stifle(45)]);
  });
  // Repeat error 1–6 degrees (Jaegger 2002; S): changes up to 6 are within error.
  it('call a change of six degrees within error, and one of seven a change', () => {
    const verdict = (now: number) =>
      [...judge([stifle(now)], [stifle(40)], [], null).byKey.values()][0]?.verdict;
    expect(verdict(46)).toBe('within error');
    expect(verdict(47)).toBe('more');
  });
  // Hind difference above 8.7 % of body weight is worth a flag (C from Hyytiäinen 2012).
  it('flag standing weight once all four limbs were weighed', () => {
    const on = (limb: Measurement['limb'], value: number): Measurement => ({
      kind: 'standing weight',
      limb,
      value,
      note: '',
    });
    const three = [on('leftFore', 9), on('rightFore', 9), on('leftHind', 4)];
    expect(judge(three, [], [], 29).standing).toBeNull();
    const four = judge([...three, on('rightHind', 7)], [], [], 29).standing;
    expect(four?.hindDifferencePercent.value).toBeCloseTo(10.34, 2);
    expect(four?.reasons).toHaveLength(1);
  });
});

describe('the course over the visits', () => {
  const visits = [
    visit('2025-01-01', [stifle(50), stifle(40, 'rightHind')]),
    visit('2025-02-01', [stifle(42), stifle(41, 'rightHind')]),
  ];
  it('holds each measurement of each limb with its verdict', () => {
    const [left, right] = measurementTrends(visits, []);
    expect(left).toMatchObject({
      unit: '°',
      reference: 42,
      verdict: 'less, against the time before',
    });
    expect(left?.points.map(({ value }) => value)).toEqual([50, 42]);
    expect(right?.verdict).toContain('within error');
  });
  it('holds the symmetry index of what was taken on both sides', () => {
    // 200 (50 − 40) / 90 = 22.2 % (C).
    const [trend] = symmetryTrends(visits);
    expect(trend?.points[0]?.value).toBeCloseTo(22.22, 2);
    expect(trend?.verdict).toBe('sides alike within error');
  });
});

describe('typed times of footfalls', () => {
  it('are read with point or comma', () => {
    expect(readTimes('0.1 0,58; 1.04')).toEqual({ times: [0.1, 0.58, 1.04] });
  });
  it('are refused where they do not rise or are no numbers', () => {
    expect(readTimes('0.5 0.4')).toHaveProperty('refused');
    expect(readTimes('0.5 x')).toHaveProperty('refused');
  });
  it('leave a limb out once it has none', () => {
    const list = withContact([], 'leftFore', 'touchDowns', 0.1234);
    expect(list).toEqual([{ limb: 'leftFore', touchDowns: [0.123], liftOffs: [] }]);
    expect(withTimes(list, 'leftFore', 'touchDowns', [])).toEqual([]);
  });
});

describe('taps', () => {
  const key = (type: 'keydown' | 'keyup', name: string, ms: number) => {
    const event = new KeyboardEvent(type, { key: name, bubbles: true, cancelable: true });
    Object.defineProperty(event, 'timeStamp', { value: ms });
    return event;
  };
  function pad() {
    const kept: { list: Footfall[] } = { list: [] };
    const wrapper = mount(TapPad, {
      props: {
        modelValue: kept.list,
        'onUpdate:modelValue': (list: Footfall[]) => {
          kept.list = list;
          void wrapper.setProps({ modelValue: list } as object);
        },
      },
      global: { plugins: appPlugins() },
    });
    const target = wrapper.get('.pad').element;
    const tap = async (type: 'keydown' | 'keyup', name: string, ms: number) => {
      target.dispatchEvent(key(type, name, ms));
      await wrapper.vm.$nextTick();
    };
    return { wrapper, kept, tap };
  }
  it('count from the first one: pressed is touch-down, released lift-off', async () => {
    const { kept, tap } = pad();
    await tap('keydown', 's', 5000);
    await tap('keydown', 'd', 5200);
    await tap('keyup', 's', 5300);
    expect(kept.list.find(({ limb }) => limb === 'leftHind')).toMatchObject({
      touchDowns: [0],
      liftOffs: [0.3],
    });
    expect(kept.list.find(({ limb }) => limb === 'leftFore')?.touchDowns).toEqual([0.2]);
  });
  it('are divided by how much slower the film runs', async () => {
    const { wrapper, kept, tap } = pad();
    await wrapper.findAll('option')[2]!.setValue();
    await tap('keydown', 's', 0);
    await tap('keyup', 's', 1000);
    expect(kept.list[0]?.liftOffs).toEqual([0.25]);
  });
  it('of a new run stand alone; those it took the place of, and cleared ones, come back', async () => {
    const { wrapper, kept, tap } = pad();
    const touchDowns = () => kept.list.map((entry) => [entry.limb, ...entry.touchDowns]);
    const press = (words: string) =>
      wrapper
        .findAll('button')
        .find((each) => each.text() === words)!
        .trigger('click');
    await tap('keydown', 's', 0);
    await tap('keydown', 'd', 500);
    await wrapper.get('.pad').trigger('focusout');
    expect(wrapper.text()).not.toContain('Bring the earlier times back');
    await tap('keydown', 'k', 9000);
    expect(touchDowns()).toEqual([['rightFore', 0]]);
    await press('Bring the earlier times back');
    expect(touchDowns()).toEqual([
      ['leftHind', 0],
      ['leftFore', 0.5],
    ]);
    await press('Clear all times');
    expect(touchDowns()).toEqual([]);
    await press('Bring the earlier times back');
    expect(touchDowns()).toHaveLength(2);
  });
});

// Hildebrand (M): walk over 50 % duty; trot at a lateral phase of 43.75–56.25 %.
it('names the gait of timed footfalls', () => {
  const limb = (name: Footfall['limb'], start: number, stance: number): Footfall => {
    const touchDowns = [0, 0.5, 1, 1.5, 2, 2.5].map((time) => time + start);
    return { limb: name, touchDowns, liftOffs: touchDowns.map((time) => time + stance) };
  };
  const footfalls = [
    limb('leftHind', 0, 0.2),
    limb('rightFore', 0, 0.2),
    limb('rightHind', 0.25, 0.2),
    limb('leftFore', 0.25, 0.2),
  ];
  const text = mount(TimingResult, {
    props: { footfalls },
    global: { plugins: appPlugins() },
  }).text();
  expect(text).toContain('Trot');
  expect(text).toContain('feet running');
  expect(text).toContain('5 strides');
});
