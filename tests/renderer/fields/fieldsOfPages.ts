import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '../../../renderer');

/** A field as a page writes it: its file under renderer/, and its attributes as they stand there. */
export interface Written {
  readonly file: string;
  /** Without the colon of a bound attribute; an expression stays as it is written. */
  readonly attributes: Readonly<Record<string, string>>;
}

/** Every use of a field component in the pages, in the order of files. */
export function written(component: string): readonly Written[] {
  const use = new RegExp(`<${component}\\b([^]*?)/>`, 'g');
  return globSync('**/*.vue', { cwd: folder })
    .toSorted()
    .flatMap((file) =>
      [...readFileSync(join(folder, file), 'utf8').matchAll(use)].map(([, inside]) => ({
        file,
        attributes: Object.fromEntries(
          [...inside!.matchAll(/\s:?([a-z-]+)="([^"]*)"/g)].map(([, name, value]) => [
            name,
            value!.replaceAll(/\s+/g, ' ').trim(),
          ]),
        ),
      })),
    );
}
