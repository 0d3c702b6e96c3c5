import type { IncomingMessage } from 'node:http';
import type { Answer } from '../contract/errors.ts';
import {
  FILE_PURPOSES,
  isFilePurpose,
  tooLargeSentence,
  type TakenFile,
} from '../contract/files/purposes.ts';
import type { Service } from '../service/service.ts';

// Files travel outside the contract's calls: as they are, and piece by piece to and from the disk.

/** Where files come in. A body may be as long as its purpose allows, and take its time. */
export const FILES_IN = '/files/in';

interface Received {
  readonly status: 200 | 400 | 413;
  readonly answer: Answer<TakenFile>;
}

const refused = (status: 400 | 413, message: string): Received => ({
  status,
  answer: { ok: false, error: { kind: 'input', message, fields: [{ path: 'file', message }] } },
});

/**
 * Takes in the file in a request's body. Its purpose and name stand in headers of our own, which no
 * form and no plain request of another page can set.
 */
export async function receiveFile(service: Service, request: IncomingMessage): Promise<Received> {
  const { headers } = request;
  const purpose = headers['trotwell-purpose'];
  if (!isFilePurpose(purpose)) return refused(400, 'A file comes for no purpose known.');
  const { maxBytes } = FILE_PURPOSES[purpose];
  const saidBytes = Number(headers['content-length'] ?? 0);
  if (saidBytes > maxBytes) return refused(413, tooLargeSentence(maxBytes));
  const name = decoded(headers['trotwell-file-name']);
  const answer = await service.takeIn(name, request, maxBytes, saidBytes);
  if (!answer.ok) await arrived(request);
  return { status: 200, answer };
}

/** A browser hears an answer only once it has sent its file: what is left of it is thrown away. */
async function arrived(request: IncomingMessage): Promise<void> {
  if (request.readableEnded || request.destroyed) return;
  request.resume();
  await new Promise((resolve) => request.once('close', resolve).once('end', resolve));
}

function decoded(name: string | string[] | undefined): string {
  if (typeof name !== 'string') return '';
  try {
    return decodeURIComponent(name);
  } catch {
    return '';
  }
}
