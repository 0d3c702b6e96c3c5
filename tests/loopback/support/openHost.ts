import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { createDoor } from '../../../electron/loopback/door.ts';
import { startHost, type Host, type HostOptions } from '../../../electron/loopback/host.ts';
import type { Service } from '../../../electron/service/service.ts';
import { temporaryFolder } from '../../service/support/desk.ts';

/** A front end of two files, and a link that leads out of its folder. */
export function smallFrontEnd(): string {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'assets'));
  writeFileSync(
    join(folder, 'index.html'),
    '<!doctype html><title>Trotwell</title><script type="module" src="/assets/app.js"></script>',
  );
  writeFileSync(join(folder, 'assets', 'app.js'), 'document.title = "Trotwell runs";');
  const outside = temporaryFolder();
  writeFileSync(join(outside, 'secret.html'), 'secret');
  symlinkSync(join(outside, 'secret.html'), join(folder, 'linked.html'));
  return folder;
}

export interface OpenHost {
  readonly host: Host;
  /** The key of a window that came in at the door. */
  readonly key: string;
}

/** A host that listens, and a window's key for it. */
export async function openHost(
  service: Service,
  options: Partial<HostOptions> = {},
): Promise<OpenHost> {
  const door = createDoor();
  const rendererFolder = options.rendererFolder ?? smallFrontEnd();
  const host = await startHost({ service, door, ...options, rendererFolder });
  const entered = door.exchange(door.newCode());
  return { host, key: entered.kind === 'key' ? entered.key : expect.fail('The door is shut.') };
}

/** The start code an address carries. */
export const codeOf = (address: string): string => new URL(address).hash.slice('#start='.length);
