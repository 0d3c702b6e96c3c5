import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { AppStatus } from '../contract/contract.ts';
import { localDay } from './day.ts';
import { seedDemo } from './demo/seed.ts';
import { DATABASE_FILES, openDesk, removeDemo, type OpenDesk } from './desk.ts';
import { readLogo, readPractice } from './practice.ts';
import { readRules } from './rules.ts';

export interface PracticesOptions {
  /** The folder of records. */
  readonly folder: string;
  readonly version: string;
  readonly clock: () => Date;
}

/** Which practice is open: the own one, the demonstration, or none yet. */
export interface Practices {
  /** The open practice; opens the own one where it exists and none is open. Null on first run. */
  desk(): OpenDesk | null;
  open(which: 'own' | 'demo'): Promise<void>;
  status(): Promise<AppStatus>;
  close(): Promise<void>;
}

export function practicesIn(options: PracticesOptions): Practices {
  const { folder, version, clock } = options;
  let current: OpenDesk | null = null;

  const ownExists = (): boolean => existsSync(join(folder, DATABASE_FILES.own));

  const desk = (): OpenDesk | null => {
    if (current === null && ownExists()) current = openDesk(folder, 'own', clock);
    return current;
  };

  const close = async (): Promise<void> => {
    await current?.close();
    current = null;
  };

  return {
    desk,
    close,
    async open(which) {
      await close();
      // The demonstration always opens as new, so that its days count back from today.
      if (which === 'demo') removeDemo(folder);
      current = openDesk(folder, which, clock);
      if (which === 'demo') await seedDemo(current);
    },
    async status() {
      const open = desk();
      return {
        version,
        open: open?.which ?? null,
        ownExists: ownExists(),
        today: localDay(clock()),
        folder,
        practice: open === null ? null : await readPractice(open),
        logo: open === null ? null : await readLogo(open),
        rules: open === null ? [] : await readRules(open.db),
      };
    },
  };
}
