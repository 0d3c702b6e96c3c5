import { de } from './de.ts';
import { en } from './en.ts';
import { es } from './es.ts';
import { fr } from './fr.ts';
import type { OwnerWords } from './words.ts';

/** The languages of the owner's sheets. */
export const LANGUAGES = ['en', 'de', 'fr', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** The wording of the owner's sheets by language. */
export const OWNER_WORDS: Readonly<Record<Language, OwnerWords>> = { en, de, fr, es };
