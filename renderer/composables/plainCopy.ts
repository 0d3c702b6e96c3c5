/** A deep copy of plain data; also takes Vue's reactive proxies, which cannot be cloned natively. */
export function plainCopy<T>(data: T): T {
  return JSON.parse(JSON.stringify(data)) as T;
}
