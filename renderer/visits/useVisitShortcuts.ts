import { useShortcut } from '../shortcuts/useShortcut.ts';
import { goToSection, keyOfSection, type Section } from './sections.ts';

/** The keys of a visit form, while it is there: Alt and a digit for each of its parts, and how Enter moves in its fields. */
export function useVisitShortcuts(sections: readonly Section[], when: () => boolean): void {
  sections.forEach(({ id, title }, index) => {
    useShortcut({
      keys: [keyOfSection(index)],
      words: title,
      scope: 'visit',
      when,
      run: () => goToSection(id),
    });
  });
  // What the form listens for itself; told of here.
  const said = { scope: 'fields', when, run: () => undefined } as const;
  useShortcut({ ...said, keys: ['Enter'], words: 'Next field, from a field of one line' });
  useShortcut({ ...said, keys: ['Shift+Enter'], words: 'The field before' });
  useShortcut({ ...said, keys: ['0–9'], words: 'Score or grade, on its scale' });
  useShortcut({ ...said, keys: ['Mod+Enter'], words: 'Save the visit' });
}
