import { flushPromises, mount } from '@vue/test-utils';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ref } from 'vue';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import type { Attachment } from '../../../electron/contract/files/attachment.ts';
import type { DogDeed } from '../../../electron/contract/calls/history.ts';
import type { DogFile, FoodDecision, Plan, Visit } from '../../../electron/contract/contract.ts';
import type { Answer } from '../../../electron/contract/errors.ts';
import type { WeighingRecord } from '../../../electron/contract/weighings/weighing.ts';
import type { Client } from '../../../renderer/api/client.ts';
import DogTimeline from '../../../renderer/dogs/timeline/DogTimeline.vue';
import { timelineEntries } from '../../../renderer/dogs/timeline/entries.ts';
import type { TimelineEntry } from '../../../renderer/dogs/timeline/entry.ts';
import { byDay, firstOpen, wholeDays } from '../../../renderer/dogs/timeline/fold.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';
import { dogFile, stored } from '../support/dogFile.ts';
import { appPlugins } from '../support/plugins.ts';
import { holds } from '../../support/laws.ts';

const TODAY = '2026-06-30';
const shown = shownWith(DEFAULT_CHOICES);
const plain = (text = '') => text.replaceAll(/[\u00a0\u202f]/g, ' ');

const visit = (day: string, facts: Partial<Visit> = {}): Visit => ({
  ...blankVisit('d', day),
  ...stored,
  kind: 'follow-up',
  id: `v-${day}`,
  author: 'AB',
  ...facts,
});
const weighing = (day: string, facts: Partial<WeighingRecord> = {}): WeighingRecord => ({
  ...stored,
  id: `w-${day}`,
  dogId: 'd',
  day,
  weightKg: 25,
  weighingMethod: 'same scale',
  scaleStepKg: 0.1,
  note: '',
  origin: 'typed',
  author: 'CD',
  ...facts,
});
/** At noon, so that the local day is the same in every time zone of the earth's land but a few. */
const at = (day: string) => `${day}T12:00:00.000Z`;
const deed = (id: number, facts: Partial<DogDeed>): DogDeed => ({
  id,
  kind: 'visit',
  recordId: 'v-2026-06-01',
  action: 'amended',
  at: at('2026-06-02'),
  author: 'CD',
  reason: '',
  day: '2026-06-01',
  name: '',
  visitId: 'v-2026-06-01',
  gone: false,
  ...facts,
});
const attachment = (id: string, facts: Partial<Attachment> = {}): Attachment => ({
  id,
  visitId: 'v-2026-06-01',
  kind: 'photo',
  name: `${id}.jpg`,
  mediaType: 'image/jpeg',
  bytes: 1000,
  thumbnail: null,
  missing: false,
  author: 'AB',
  createdAt: at('2026-06-01'),
  ...facts,
});
const food = { decision: 'edited', kcalPerDay: 740, note: 'Less dry food.', author: 'AB' } as const;
const ramp = { request: { ownerMinutes: 20 } };
const plan = { version: 2, origin: 'reviewed', author: 'AB', note: '', ramp } as const;

const FILE: DogFile = {
  ...dogFile([visit('2025-05-01'), visit('2026-06-01', { weightKg: 26, notes: 'Coughs.' })]),
  weighings: [weighing('2026-06-15', { weighingMethod: 'wet coat', origin: 'imported' })],
  foodDecisions: [
    {
      ...food,
      id: 'f',
      visitId: 'v-2026-06-01',
      decidedOn: '2026-06-01',
    } as unknown as FoodDecision,
  ],
  plans: [
    {
      ...plan,
      id: 'p',
      madeOn: '2026-06-01',
      review: { decision: 'hold', reasons: [] },
    } as unknown as Plan,
  ],
};
const entriesOf = (deeds: readonly DogDeed[] = [], files: readonly Attachment[] = []) =>
  timelineEntries({ file: FILE, files, deeds }, shown);

describe('the entries of a timeline', () => {
  it('are the newest first, and within a day in the order of a visit', () => {
    const entries = entriesOf([deed(1, { at: at('2026-06-01') })], [attachment('one')]);
    expect(entries.map(({ day, kind }) => `${day} ${kind}`)).toEqual([
      '2026-06-15 weighing',
      '2026-06-01 visit',
      '2026-06-01 food',
      '2026-06-01 plan',
      '2026-06-01 file',
      '2026-06-01 change',
      '2025-05-01 visit',
    ]);
  });

  it('say what happened, by whom, and lead to where it stands', () => {
    const entries = entriesOf([deed(1, { reason: 'Read off wrongly.' })], [attachment('one')]);
    const told = entries.map(({ title, author, to, lines }) => [plain(title), author, to, lines]);
    expect(told.slice(0, 6)).toEqual([
      ['Weighed 25.0 kg', 'CD', '/dogs/d#story-weight', ['wet coat, from a table']],
      [
        'Follow-up of 2026-06-01 amended',
        'CD',
        '/dogs/d/visits/v-2026-06-01',
        ['Reason: Read off wrongly.'],
      ],
      [
        'Follow-up',
        'AB',
        '/dogs/d/visits/v-2026-06-01',
        [expect.stringMatching(/^26.0.kg, gait not looked at$/), 'Coughs.'],
      ],
      ['Food edited: 740 kcal/day', 'AB', '/dogs/d/visits/v-2026-06-01', ['Less dry food.']],
      [
        'Running plan, version 2, from a review',
        'AB',
        '/dogs/d/plan',
        [
          'Hold: repeat the week',
          expect.stringMatching(/^The owner runs 20.min without a break\.$/),
        ],
      ],
      ['Added one.jpg', 'AB', '/dogs/d/visits/v-2026-06-01', []],
    ]);
  });

  it('tell what was asked and found at a visit, and of what is kept only what is new', () => {
    const known = {
      diagnosis: 'Old rupture',
      injuries: [
        { kind: 'surgery', structure: 'cruciate', side: 'left', day: '2023-04-01', done: 'plate' },
      ],
      exercises: ['sit-to-stand'],
    } satisfies Partial<Visit>;
    const visits = [
      visit('2025-05-01', { ...known, sitToStand: 'leans left', stool: 'soft', signs: ['cough'] }),
      visit('2026-06-01', { ...known, medicine: 'Joint tablets', sitToStand: 'leans left' }),
    ];
    const file = dogFile(visits);
    const entries = timelineEntries({ file, files: [], deeds: [] }, shown);
    expect(entries.map(({ lines }) => lines.slice(1))).toEqual([
      ['Medicine: Joint tablets', 'Sit to stand: leans left'],
      [
        'Signs: Cough',
        'Diagnosis: Old rupture · Surgery, cruciate: side: left; day: 2023-04-01; what was done: plate',
        'Sit to stand: leans left',
        'Stool: soft',
        'Strength exercises: Sit to stand',
      ],
    ]);
  });

  it('put the files of one person at one visit on one day together', () => {
    const files = [
      attachment('one'),
      attachment('two'),
      attachment('three', { author: 'CD' }),
      attachment('four', { createdAt: at('2026-06-09') }),
    ];
    const titles = entriesOf([], files)
      .filter(({ kind }) => kind === 'file')
      .map(({ title, day }) => `${day} ${title}`);
    expect(titles).toEqual([
      '2026-06-09 Added four.jpg',
      '2026-06-01 Added 2 files',
      '2026-06-01 Added three.jpg',
    ]);
  });

  it('tell outings that were told anew together, unless there is a reason', () => {
    const session = { kind: 'session', visitId: null } as const;
    const titles = entriesOf([
      deed(4, { ...session, recordId: 's1', day: '2026-05-30' }),
      deed(3, { ...session, recordId: 's2', day: '2026-05-28' }),
      deed(2, { ...session, recordId: 's3', day: '2026-05-26', reason: 'Wrong day.' }),
    ])
      .filter(({ kind }) => kind === 'change')
      .map(({ title }) => title);
    expect(titles).toEqual(['2 outings amended', 'Outing of 2026-05-26 amended']);
  });

  it('lead to the bin for what is out of the file, and to the visit for what is in it', () => {
    const pathOf = (facts: Partial<DogDeed>) =>
      entriesOf([deed(1, facts)]).find(({ kind }) => kind === 'change')!.to;
    expect(pathOf({ action: 'binned', gone: true, visitId: 'v-x', recordId: 'v-x' })).toBe('/bin');
    expect(pathOf({ action: 'restored' })).toBe('/dogs/d/visits/v-2026-06-01');
    expect(pathOf({ kind: 'attachment', action: 'binned', gone: true, name: 'a.jpg' })).toBe(
      '/dogs/d/visits/v-2026-06-01',
    );
    expect(pathOf({ kind: 'dog', visitId: null, day: null })).toBe('/dogs/d/edit');
    expect(pathOf({ kind: 'weighing', action: 'removed', gone: true, visitId: null })).toBe(
      '/dogs/d#story-weight',
    );
  });
});

describe('folding a long timeline', () => {
  const entry = (day: string, index: number): TimelineEntry => ({
    key: String(index),
    kind: 'visit',
    day,
    author: '',
    title: '',
    to: '',
    lines: [],
  });
  const days = fc.array(fc.integer({ min: 0, max: 900 }), { maxLength: 80 }).map((ages) =>
    ages
      .sort((a, b) => a - b)
      .map((age, index) => {
        const day = new Date(Date.UTC(2026, 5, 30 - age)).toISOString().slice(0, 10);
        return entry(day, index);
      }),
  );

  it('parts no day, and hides nothing of the last year but what is more than 20', () => {
    holds(
      fc.property(days, (entries) => {
        const open = firstOpen(entries, TODAY);
        expect(entries[open]?.day).not.toBe(entries[open - 1]?.day ?? 'none');
        const recent = entries.filter(({ day }) => day >= '2025-06-30').length;
        expect(open).toBeGreaterThanOrEqual(Math.min(20, recent));
        expect(open).toBeGreaterThanOrEqual(Math.min(3, entries.length));
        const lastDay = entries[open - 1]?.day;
        const before = entries.filter(({ day }) => lastDay !== undefined && day > lastDay).length;
        expect(before).toBeLessThan(20);
        expect(wholeDays(entries, entries.length + 50)).toBe(entries.length);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('puts the entries of a day under one heading', () => {
    const grouped = byDay([entry('2026-06-02', 1), entry('2026-06-02', 2), entry('2026-06-01', 3)]);
    expect(grouped.map(({ day, entries }) => [day, entries.length])).toEqual([
      ['2026-06-02', 2],
      ['2026-06-01', 1],
    ]);
  });
});

/** A service that answers the two lists a timeline asks for. */
function service(deeds: readonly DogDeed[] | null, files: readonly Attachment[] = []): Client {
  const away: Answer<never> = { ok: false, error: { kind: 'unreachable', message: 'Away.' } };
  const answers: Readonly<Record<string, unknown>> = {
    'attachments/list': files,
    ...(deeds === null ? {} : { 'dogs/deeds': deeds }),
  };
  return {
    refused: ref(null),
    lockedAnswers: ref(0),
    call: async (name) =>
      name in answers ? ({ ok: true, value: answers[name] } as Answer<never>) : away,
    files: {
      chooseFile: async () => away,
      chooseFiles: async () => away,
      sendFile: async () => away,
      saveProduced: async () => 'not saved',
    },
  };
}

async function timeline(file: DogFile, client = service([])) {
  const wrapper = mount(DogTimeline, {
    props: { file, today: TODAY },
    global: { plugins: appPlugins({}, client) },
    attachTo: document.body,
  });
  await flushPromises();
  return wrapper;
}

describe('the timeline of a dog', () => {
  it('narrows to one kind, each named with its number', async () => {
    const wrapper = await timeline(FILE, service([deed(1, {})], [attachment('one')]));
    const buttons = wrapper.findAll('[aria-label="What is shown"] button');
    expect(buttons.map((button) => button.text())).toEqual([
      'Everything',
      'Visits 2',
      'Weighings 1',
      'Food 1',
      'Running plan 1',
      'Files 1',
      'Changes 1',
    ]);
    await buttons[6]!.trigger('click');
    expect(wrapper.findAll('.entry a').map((link) => link.text())).toEqual([
      'Follow-up of 2026-06-01 amended',
    ]);
    expect(buttons.map((button) => button.attributes('aria-pressed'))).toEqual([
      ...Array(6).fill('false'),
      'true',
    ]);
    await buttons[0]!.trigger('click');
    expect(wrapper.findAll('.entry')).toHaveLength(6);
  });

  it('folds what is over a year old until it is asked for', async () => {
    const wrapper = await timeline(FILE);
    const headings = () => wrapper.findAll('h3').map((heading) => heading.text());
    expect(headings()).toEqual(['2026-06-15', '2026-06-01']);
    expect(wrapper.text()).toContain('1 entry, back to 2025-05-01');
    await wrapper.get('p.row button').trigger('click');
    expect(headings().at(-1)).toBe('2025-05-01');
    expect(wrapper.find('p.row').exists()).toBe(false);
  });

  it('shows the rest, and says so, where changes cannot be told', async () => {
    const wrapper = await timeline(FILE, service(null));
    expect(wrapper.text()).toContain('Changes and files cannot be listed');
    expect(wrapper.findAll('.entry').length).toBeGreaterThan(2);
  });
});
