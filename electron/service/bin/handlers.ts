import { finishErasure, checkErasure, eraseClient } from '../erasure/erase.ts';
import { readErasures } from '../erasure/record.ts';
import { olderBackups } from '../erasure/wipe.ts';
import type { Handlers } from '../database/context.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import { emptyBin } from './empty.ts';
import { listBin } from './list.ts';
import { archiveDog, checkBin, putIntoBin, restoreFromBin } from './put.ts';

type BinCall = 'bin/check' | 'bin/put' | 'bin/restore' | 'bin/list' | 'bin/empty' | 'dogs/archive';
type ErasureCall = 'clients/eraseCheck' | 'clients/erase' | 'erasures/list' | 'erasures/finish';

export const binHandlers: Handlers<BinCall> = {
  'bin/check': checkBin,
  'bin/put': putIntoBin,
  'bin/restore': restoreFromBin,
  'bin/list': listBin,
  'bin/empty': emptyBin,
  'dogs/archive': archiveDog,
};

export const erasureHandlers: Handlers<ErasureCall> = {
  'clients/eraseCheck': checkErasure,
  'clients/erase': eraseClient,
  'erasures/list': async (context) => {
    const erasures = await readErasures(context.db);
    return { erasures, olderBackups: olderBackups(context, erasures[0]?.erasedAt ?? null) };
  },
  'erasures/finish': async (context) => {
    await removeUnusedFiles(context);
    return finishErasure(context);
  },
};
