import { finishErasure, checkErasure, eraseClient } from '../erasure/erase.ts';
import { readErasures } from '../erasure/record.ts';
import { olderBackups } from '../erasure/wipe.ts';
import type { Handlers } from '../context.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import { archiveDog } from './archive.ts';
import { emptyBin } from './empty.ts';
import { listBin } from './list.ts';
import { checkBin, putIntoBin, restoreFromBin } from './put.ts';

type BinCall = 'bin/check' | 'bin/put' | 'bin/restore' | 'bin/list' | 'bin/empty' | 'dogs/archive';
type ErasureCall = 'clients/eraseCheck' | 'clients/erase' | 'erasures/list' | 'erasures/finish';

export const binHandlers: Handlers<BinCall> = {
  'bin/check': (desk, { kind, id }) => checkBin(desk.db, kind, id),
  'bin/put': async (desk, { kind, id, reason }) => {
    await putIntoBin(desk, kind, id, reason ?? '');
    return null;
  },
  'bin/restore': async (desk, { kind, id }) => {
    await restoreFromBin(desk, kind, id);
    return null;
  },
  'bin/list': listBin,
  'bin/empty': emptyBin,
  'dogs/archive': (desk, { id, archived }) => archiveDog(desk, id, archived),
};

export const erasureHandlers: Handlers<ErasureCall> = {
  'clients/eraseCheck': (desk, { clientId }) => checkErasure(desk, clientId),
  'clients/erase': eraseClient,
  'erasures/list': async (desk) => {
    const erasures = await readErasures(desk.db);
    return { erasures, olderBackups: olderBackups(desk, erasures[0]?.erasedAt ?? null) };
  },
  'erasures/finish': async (desk) => {
    await removeUnusedFiles(desk);
    return finishErasure(desk);
  },
};
