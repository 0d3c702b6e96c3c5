/** The parts of the visit form, in the order of an assessment. */
export const SECTIONS = [
  { id: 'history', title: 'History and consent' },
  { id: 'weight', title: 'Weight and condition' },
  { id: 'gait', title: 'Gait and lameness' },
  { id: 'signs', title: 'Signs' },
  { id: 'food', title: 'Food' },
  { id: 'plan', title: 'Running plan' },
  { id: 'notes', title: 'Notes' },
] as const;

export type SectionId = (typeof SECTIONS)[number]['id'];
