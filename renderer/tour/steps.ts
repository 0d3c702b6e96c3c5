/** One of the first steps: what it is about, and what to know. */
export interface TourStep {
  readonly title: string;
  readonly text: string;
}

/** The way of a dog through the program, in the order it is gone. */
export const TOUR_STEPS: readonly TourStep[] = [
  {
    title: 'Find or add a dog',
    text: 'The box above finds dogs, owners, breeds and phone numbers. A name nobody has, and Enter, begins a new dog. From any page, / leads to the box.',
  },
  {
    title: 'The intake',
    text: 'One page in the order of an assessment: history, signs, weight and condition, gait, food, plan. What you type is kept as you type it; units may be typed as people say them, such as 62 lb.',
  },
  {
    title: 'What follows from it',
    text: 'Beside the form stands what the record comes to: whether the dog may run, its energy, the food, the running plan. “why” beside a number shows where it comes from and how sure it is.',
  },
  {
    title: 'Paper to take home',
    text: 'Handouts are printed from the dog’s page: the plan and the feeding sheet for the owner, a letter for the vet. You may change what is proposed; your reason is printed with it.',
  },
  {
    title: 'Follow-ups and records',
    text: 'The desk shows who is due and whose weight leaves its course. Nothing is overwritten, and what is removed goes to a bin. Backups, import and the lock are in the settings, under Records and backups.',
  },
];
