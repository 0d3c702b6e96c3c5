/** Signs that send the dog to the vet before any running (CP, M). */
export const RED_FLAGS = [
  { id: 'joint-effusion', label: 'Joint swollen or filled', emergency: false },
  { id: 'joint-instability', label: 'Joint unstable', emergency: false },
  { id: 'knuckling', label: 'Knuckling over of a paw', emergency: false },
  { id: 'ataxia', label: 'Uncoordinated gait (ataxia)', emergency: false },
  { id: 'spinal-pain', label: 'Pain in neck or back', emergency: false },
  { id: 'collapse', label: 'Collapse, now or in the history', emergency: true },
  { id: 'new-murmur', label: 'New heart murmur', emergency: false },
  { id: 'cough', label: 'Cough', emergency: false },
  { id: 'exercise-intolerance', label: 'Tires far too soon', emergency: false },
  { id: 'noisy-breathing', label: 'Noisy breathing at rest', emergency: true },
  { id: 'pregnancy', label: 'Pregnant', emergency: false },
  { id: 'lactation', label: 'Nursing puppies', emergency: false },
  { id: 'fever', label: 'Fever', emergency: false },
  { id: 'pale-gums', label: 'Pale gums', emergency: true },
  { id: 'distended-abdomen', label: 'Swollen, tight belly', emergency: true },
] as const;

export type RedFlag = (typeof RED_FLAGS)[number]['id'];

/**
 * The label of a sign; undefined for an unknown id.
 * @example redFlagLabel('ataxia') // => 'Uncoordinated gait (ataxia)'
 */
export function redFlagLabel(id: string): string | undefined {
  return RED_FLAGS.find((flag) => flag.id === id)?.label;
}
