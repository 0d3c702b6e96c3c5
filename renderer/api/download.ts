/** Hands data to the browser for saving; where it goes is the browser's affair. */
export function download(data: Blob, fileName: string): void {
  const url = URL.createObjectURL(data);
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // The download has its own hold on the data once the click is handled.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
