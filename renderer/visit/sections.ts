/** Every part of the visit form. */
const TITLES = {
  history: 'History and consent',
  weight: 'Weight and condition',
  sessions: 'Sessions since the last visit',
  gait: 'Gait and lameness',
  signs: 'Signs',
  food: 'Food',
  plan: 'Running plan',
  notes: 'Notes',
  proposals: 'Proposals',
} as const;

export type SectionId = keyof typeof TITLES;

export interface Section {
  readonly id: SectionId;
  readonly title: string;
}

/** Parts that only a visit with a plan in force has. */
const OF_A_RUNNING_PLAN: readonly SectionId[] = ['sessions', 'proposals'];

/** The parts of a visit, in the order of an assessment. */
export function sectionsOf(followsPlan: boolean): readonly Section[] {
  return (Object.keys(TITLES) as SectionId[])
    .filter((id) => followsPlan || !OF_A_RUNNING_PLAN.includes(id))
    .map((id) => ({ id, title: TITLES[id] }));
}

/** Brings a part into view and moves the focus to its heading. */
export function goToSection(id: SectionId): void {
  const heading = document.getElementById(`part-${id}`);
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}
