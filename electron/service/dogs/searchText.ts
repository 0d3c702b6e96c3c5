import { sql, type RawBuilder } from 'kysely';

/** Text as it is searched: without accents and case, so that "muller" finds "Müller". */
export function searchText(...parts: readonly string[]): string {
  return parts
    .join(' ')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}

/** The words of a query, each ready for LIKE with backslash as escape character. */
export function likeWords(query: string): string[] {
  return searchText(query)
    .split(' ')
    .filter((word) => word !== '')
    .map((word) => `%${word.replace(/[\\%_]/g, '\\$&')}%`);
}

/** The condition that a column of searchable text holds one of `likeWords`. */
export function matches(column: string, word: string): RawBuilder<boolean> {
  return sql<boolean>`${sql.ref(column)} like ${word} escape '\\'`;
}
