import { dirname } from 'node:path';

// What a system promises of files, in the strictest reading (POSIX.1-2017, fsync and rename): a
// content lasts once its file was flushed after the last write; a name lasts, or is gone, once its
// folder was flushed after the change. Everything else may be lost when the power goes.

interface Content {
  flushed: boolean;
}

/** Follows the calls of a program and knows what would be left if the power went now. */
export interface StrictDisk {
  /** Takes in one line of `strace -f -y`; lines about other things are no matter. */
  follow(line: string): void;
  /** What is there and would not be left as it is, with the reason; one line each. */
  atRisk(root: string, matters: (name: string) => boolean): string[];
}

export function strictDisk(): StrictDisk {
  /** What is there by name, and what of it the folders on the disk say. */
  const there = new Map<string, Content>();
  const lasting = new Map<string, Content>();

  const make = (path: string): void => {
    if (!there.has(path)) there.set(path, { flushed: true });
  };
  const move = (from: string, to: string): void => {
    for (const [path, content] of [...there]) {
      if (path !== from && !path.startsWith(`${from}/`)) continue;
      there.delete(path);
      there.set(to + path.slice(from.length), content);
      // What lay in a moved folder was named by the folder itself; it goes with it.
      if (path !== from && lasting.get(path) === content) {
        lasting.set(to + path.slice(from.length), content);
      }
    }
  };
  const flush = (path: string): void => {
    const content = there.get(path);
    if (content !== undefined) content.flushed = true;
    // Flushed as a folder: the names in it are what they are now.
    for (const known of [...lasting.keys()]) {
      if (dirname(known) === path && !there.has(known)) lasting.delete(known);
    }
    for (const [known, inside] of there) if (dirname(known) === path) lasting.set(known, inside);
  };
  const write = (path: string): void => {
    const content = there.get(path);
    if (content !== undefined) content.flushed = false;
  };

  return {
    follow(line) {
      const call = / (\w+)\((.*)\) += (-?\d+)/.exec(line);
      if (call === null || Number(call[3]) < 0) return;
      const [, name, args] = call as unknown as [string, string, string];
      const quoted = [...args.matchAll(/"([^"]*)"/g)].map(([, text]) => text!);
      const held = /^\d+<([^>]*)>/.exec(args)?.[1] ?? '';
      if (name === 'openat' && args.includes('O_CREAT')) make(quoted[0]!);
      else if (name.startsWith('mkdir')) make(quoted[0]!);
      else if (name.startsWith('rename')) move(quoted[0]!, quoted[1]!);
      else if (name.startsWith('unlink') || name === 'rmdir') there.delete(quoted[0]!);
      else if (name === 'fsync' || name === 'fdatasync') flush(held);
      // A log that was folded in may come back whole: SQLite takes in once more what it knows.
      else if (name === 'ftruncate' && held.endsWith('-wal')) return;
      else if (/^p?writev?(64)?$|truncate/.test(name)) write(held);
      else if (/copy_file_range|sendfile/.test(name)) {
        write(/, \d+<([^>]*)>/.exec(args)?.[1] ?? held);
        if (name === 'sendfile') write(held);
      }
    },
    atRisk(root, matters) {
      const risks: string[] = [];
      for (const [path, content] of there) {
        if (path !== root && !path.startsWith(`${root}/`)) continue;
        const shown = path.slice(root.length + 1);
        if (!matters(shown)) continue;
        if (lasting.get(path) !== content) risks.push(`${shown}: its name may be lost`);
        if (!content.flushed) risks.push(`${shown}: its content may be lost`);
      }
      return risks;
    },
  };
}
