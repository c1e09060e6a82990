// A file handed to the browser to keep.

export function download(name: string, type: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  // The browser has taken the blob by the next turn of its loop; a minute is plenty.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A title as any file system takes it; letters of every script stay. */
export const plainName = (title: string) =>
  title
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
