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
  'bin/check': (context, { kind, id }) => checkBin(context.db, kind, id),
  'bin/put': async (context, { kind, id, reason }) => {
    await putIntoBin(context, kind, id, reason ?? '');
    return null;
  },
  'bin/restore': async (context, { kind, id }) => {
    await restoreFromBin(context, kind, id);
    return null;
  },
  'bin/list': listBin,
  'bin/empty': emptyBin,
  'dogs/archive': (context, { id, archived }) => archiveDog(context, id, archived),
};

export const erasureHandlers: Handlers<ErasureCall> = {
  'clients/eraseCheck': (context, { clientId }) => checkErasure(context, clientId),
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
