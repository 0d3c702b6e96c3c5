import { afterEach, describe, expect, it } from 'vitest';
import { nextTick, type Component } from 'vue';
import type { z } from 'zod';
import { grouped } from '../../../core/quantityText.ts';
import TextField from '../../../renderer/components/fields/TextField.vue';
import FoodName from '../../../renderer/visits/FoodName.vue';
import { contract, type CallName } from '../../../electron/contract/contract.ts';
import { TEXT_LENGTH } from '../../../electron/contract/limits.ts';
import { mountField } from '../support/mountField.ts';
import { written, type Written } from './fieldsOfPages.ts';

type Length = keyof typeof TEXT_LENGTH;

/** Every text field of the program, and where in the contract its text goes; 0 is any line of a list. */
const TEXTS: readonly (readonly [file: string, label: string, CallName, path: string])[] = [
  ['bin/EraseForm.vue', 'Name of the owner', 'clients/erase', 'confirmName'],
  ['bin/PutDialog.vue', 'Reason', 'bin/put', 'reason'],
  ['dogs/form/DogFields.vue', 'Name of the dog', 'dogs/save', 'dog.name'],
  ['dogs/form/DogFields.vue', 'Breed', 'dogs/save', 'dog.breed'],
  ['dogs/form/DogFields.vue', 'Notes on the dog', 'dogs/save', 'dog.notes'],
  ['dogs/form/OwnerFields.vue', 'Name of the owner', 'dogs/saveWithOwner', 'client.name'],
  ['dogs/form/OwnerFields.vue', 'Phone', 'dogs/saveWithOwner', 'client.phone'],
  ['dogs/form/OwnerFields.vue', 'E-mail', 'dogs/saveWithOwner', 'client.email'],
  ['dogs/form/OwnerFields.vue', 'Address', 'dogs/saveWithOwner', 'client.address'],
  ['dogs/form/OwnerFields.vue', 'Vet practice', 'dogs/saveWithOwner', 'client.vetPractice'],
  ['dogs/form/OwnerFields.vue', 'Treating vet', 'dogs/saveWithOwner', 'client.vetName'],
  ['dogs/form/OwnerFields.vue', 'Contact of the vet', 'dogs/saveWithOwner', 'client.vetContact'],
  ['dogs/form/OwnerFields.vue', 'Notes on the owner', 'dogs/saveWithOwner', 'client.notes'],
  ['gait/MeasurePart.vue', 'How the girth was taken', 'visits/save', 'visit.measurements.0.note'],
  ['pages/DogFormPage.vue', 'Reason for the change', 'dogs/amendWithOwner', 'reason'],
  ['pages/SettingsPage.vue', 'Name of the practice', 'practice/save', 'name'],
  ['pages/SettingsPage.vue', 'Name of the practitioner', 'practice/save', 'practitioner'],
  ['pages/SettingsPage.vue', 'Phone', 'practice/save', 'phone'],
  ['pages/SettingsPage.vue', 'E-mail', 'practice/save', 'email'],
  ['pages/SettingsPage.vue', 'Address', 'practice/save', 'address'],
  ['pages/SettingsPage.vue', 'Registration text', 'practice/save', 'registration'],
  ['pages/SettingsPage.vue', 'Line at the foot of each page', 'practice/save', 'footer'],
  ['plans/BreachLine.vue', 'Keep it, because', 'plans/edit', 'kept.0.reason'],
  ['plans/EditPart.vue', 'Note on the change', 'plans/edit', 'note'],
  ['plans/ReviewPart.vue', 'Note on the review', 'plans/review', 'note'],
  ['plans/SessionMore.vue', 'The owner’s words', 'sessions/save', 'session.note'],
  ['rules/RuleLine.vue', 'Reason for the change', 'rules/set', 'reason'],
  ['settings/FoodsPart.vue', 'Name', 'shelf/keepFood', 'food.name'],
  ['settings/PeoplePart.vue', 'Name', 'practitioners/save', 'practitioner.name'],
  ['settings/PhrasesPart.vue', 'Text of the phrase', 'shelf/keepPhrase', 'text'],
  ['visits/AmendPart.vue', 'Reason for the amendment', 'visits/save', 'reason'],
  ['visits/DietTable.vue', "entry.treat ? 'Treat' : 'Food'", 'visits/save', 'visit.diet.0.name'],
  ['visits/FoodProposalPart.vue', 'Note on the decision', 'visits/save', 'food.note'],
  ['visits/FoodSwitchFields.vue', 'Name of the new food', 'visits/save', 'food.foodSwitch.name'],
  ['visits/GaitSection.vue', 'Gait note', 'visits/save', 'visit.gaitNote'],
  [
    'visits/ClearancePart.vue',
    'Vet who cleared it',
    'visits/save',
    'visit.lamenessClearances.0.vet',
  ],
  ['visits/ClearancePart.vue', 'Cleared for', 'visits/save', 'visit.lamenessClearances.0.scope'],
  ['visits/InjuryPart.vue', 'Structure', 'visits/save', 'visit.injuries.0.structure'],
  ['visits/InjuryPart.vue', 'What was done', 'visits/save', 'visit.injuries.0.done'],
  ['visits/DiseasePart.vue', 'Which disease', 'visits/save', 'visit.disease.words'],
  ['visits/MedicinePart.vue', 'Medicine given now', 'visits/save', 'visit.medicine'],
  ['visits/FeedingPart.vue', 'Who feeds the dog', 'visits/save', 'visit.feeding.fedBy'],
  ['visits/FeedingPart.vue', 'Table food and supplements', 'visits/save', 'visit.feeding.extras'],
  [
    'visits/QuestionnairePart.vue',
    'Name of the questionnaire',
    'visits/save',
    'visit.questionnaires.0.name',
  ],
  ['visits/HistoryFields.vue', 'Vet', 'visits/save', 'visit.consent.vet'],
  ['visits/HistoryFields.vue', 'For what', 'visits/save', 'visit.consent.scope'],
  ['visits/PlanProposalPart.vue', 'Note on the plan', 'visits/save', 'review.note'],
  ['visits/PlanProposalPart.vue', 'Reason for declining', 'visits/save', 'visit.notes'],
  ['visits/ReasonFields.vue', 'Reason for the referral', 'visits/save', 'visit.referral'],
  ['visits/ReasonFields.vue', 'Diagnosis', 'visits/save', 'visit.diagnosis'],
  ['visits/NotesSection.vue', 'Notes on the visit', 'visits/save', 'visit.notes'],
  ['visits/OverrideFields.vue', 'shown.says(gate)', 'visits/save', 'visit.overrides.0.reason'],
  ['plans/SessionMore.vue', 'Reason for the change', 'sessions/save', 'reason'],
  ['weighings/AmendWeighing.vue', 'Reason for the amendment', 'weighings/amend', 'reason'],
  ['weighings/WeighingFields.vue', 'Note', 'weighings/save', 'weighing.note'],
];

/** Text fields of a fixed pattern, whose own sentence says it. */
const PATTERNS = [
  [
    'dogs/form/DogFields.vue',
    'Chip number',
    'dogs/save',
    'dog.chip',
    '12345',
    'Chip number must have 15 digits.',
  ],
  [
    'settings/AccentField.vue',
    'Accent colour',
    'practice/save',
    'accent',
    'green',
    'Accent colour must be written like #1f4b7a',
  ],
  [
    'settings/PeoplePart.vue',
    'Initials',
    'practitioners/save',
    'practitioner.initials',
    '12345',
    'Initials must be 1 to 4 letters.',
  ],
] as const;

/** What offers foods while one types takes its text by a text field inside. */
const KINDS: readonly (readonly [component: string, field: Component, props: object])[] = [
  ['TextField', TextField, {}],
  ['FoodName', FoodName, { kept: [] }],
];
const INSIDE = 'components/fields/SuggestField.vue';
const FIELDS = KINDS.flatMap(([component, field, props]) =>
  written(component)
    .filter(({ file }) => file !== INSIDE)
    .map((use) => ({ ...use, field, props })),
);
const isLabelled =
  (file: string, label: string) =>
  (use: Written): boolean =>
    use.file === file && use.attributes['label'] === label;

/** The part of a schema that takes the text at a path. */
function schemaAt(call: CallName, path: string): z.ZodType {
  let schema = contract[call].input as unknown as Loose;
  for (const step of path.split('.')) {
    const found = unwrapped(schema);
    schema = step === '0' ? found.element! : found.shape[step]!;
  }
  return schema as unknown as z.ZodType;
}

/** A schema seen from outside: zod's classes, without their generics. */
interface Loose {
  readonly shape: Record<string, Loose>;
  readonly element?: Loose;
  readonly options?: readonly Loose[];
  unwrap?(): Loose;
}

function unwrapped(schema: Loose): Loose {
  if (schema.options !== undefined) return unwrapped(schema.options[0]!);
  if (schema.unwrap === undefined || schema.element !== undefined) return schema;
  return unwrapped(schema.unwrap());
}

function mountText(use: (typeof FIELDS)[number]) {
  const { label, lines, length } = use.attributes;
  const props = {
    ...use.props,
    label,
    ...(lines === undefined ? {} : { lines: Number(lines) }),
    ...(length === undefined ? {} : { length }),
  };
  const { wrapper, form } = mountField(use.field, { it: '' }, 'it', props);
  const input = wrapper.get(lines === undefined ? 'input' : 'textarea');
  return {
    form,
    wrapper,
    problem: () => (wrapper.find('.problem').exists() ? wrapper.get('.problem').text() : null),
    async type(text: string) {
      await input.setValue(text);
      await input.trigger('blur');
    },
  };
}

afterEach(() => {
  document.body.innerHTML = '';
});

describe.each(TEXTS)('%s, “%s”', (file, label, call, path) => {
  const use = FIELDS.find(isLabelled(file, label))!;
  const { length, lines } = use.attributes;
  const most =
    TEXT_LENGTH[(length as Length | undefined) ?? (lines === undefined ? 'line' : 'notes')];

  it('takes as much as the record does, and no more, by its name and length', async () => {
    const field = mountText(use);
    expect(field.wrapper.get('label').text()).toContain(label);
    for (const characters of [most, most + 1]) {
      const text = 'a'.repeat(characters);
      const taken = characters <= most;
      expect(schemaAt(call, path).safeParse(text).success, `${characters}`).toBe(taken);
      await field.type(text);
      const refusal = `${label} may have at most ${grouped(most)} characters; it has ${grouped(characters)}.`;
      expect(field.problem()).toBe(taken ? null : refusal);
      expect(field.form.values.it).toBe(text);
      expect(field.form.attempt()).toBe(taken);
    }
    await field.type('shorter');
    expect(field.problem()).toBeNull();
    expect(field.form.attempt()).toBe(true);
  });
});

describe.each(PATTERNS)('%s, “%s”', (file, label, call, path, wrong, sentence) => {
  it('shows what the record refuses, until it is changed', async () => {
    const refusal = schemaAt(call, path).safeParse(wrong).error?.issues[0]?.message ?? '';
    expect(refusal).toContain(sentence);
    const field = mountText(FIELDS.find(isLabelled(file, label))!);
    await field.type(wrong);
    field.form.takeError({
      kind: 'input',
      message: '',
      fields: [{ path: 'it', message: refusal }],
    });
    await nextTick();
    expect(field.problem()).toBe(refusal);
    await field.type('');
    expect(field.problem()).toBeNull();
  });
});

it('leaves out no text field of any page', () => {
  const listed = [...TEXTS, ...PATTERNS].map(([file, label]) => `${file}: ${label}`);
  const found = FIELDS.map(({ file, attributes }) => `${file}: ${attributes['label']}`);
  expect(found.toSorted()).toEqual(listed.toSorted());
});
