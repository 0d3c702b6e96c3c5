import { firstRecords } from './0001-first-records.ts';
import { historyBinFiles } from './0002-history-bin-files.ts';
import { trainingFacts } from './0003-training-facts.ts';
import { visitFindings } from './0004-visit-findings.ts';
import { ownFoodsAndPhrases } from './0005-own-foods-and-phrases.ts';
import type { Migration } from './migration.ts';

/** All migrations, in order, numbered from 1 without gaps. A released one never changes. */
export const MIGRATIONS: readonly Migration[] = [
  firstRecords,
  historyBinFiles,
  trainingFacts,
  visitFindings,
  ownFoodsAndPhrases,
];
