/** Every part of the visit form. */
const TITLES = {
  why: 'Why it comes',
  weight: 'Weight and condition',
  sessions: 'Sessions since the last visit',
  gait: 'Gait and lameness',
  signs: 'Pain and signs',
  history: 'History and consent',
  plan: 'Running plan',
  food: 'Food',
  notes: 'Notes and photos',
  proposals: 'Decisions',
} as const;

export type SectionId = keyof typeof TITLES;

export interface Section {
  readonly id: SectionId;
  readonly title: string;
}

/** What a part is called. */
export const titleOf = (id: SectionId): string => TITLES[id];

/** Parts that only a visit with a plan in force has. */
const OF_A_RUNNING_PLAN: readonly SectionId[] = ['sessions'];

/** The parts of a visit, in the order of an assessment. */
export function sectionsOf(followsPlan: boolean): readonly Section[] {
  return (Object.keys(TITLES) as SectionId[])
    .filter((id) => followsPlan || !OF_A_RUNNING_PLAN.includes(id))
    .map((id) => ({ id, title: TITLES[id] }));
}

/** The key that leads to a part by its place; the tenth has the 0. */
export const keyOfSection = (index: number): string => `Alt+${(index + 1) % 10}`;

/** Brings a part into view and moves the focus to its heading. */
export function goToSection(id: SectionId): void {
  const heading = document.getElementById(`part-${id}`);
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}
