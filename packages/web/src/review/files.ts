// Which files are frames: those in folders and below that end as pictures do, and files that are chosen one by one.

/** A file, and the name that it goes by: its path below the folder that was given. */
export interface PhotoFile {
  readonly name: string;
  readonly file: File;
}

/** Endings that pictures have; a file of another ending in a folder is none of ours. */
const PICTURE = /\.(?:jpe?g|tiff?|dng|hei[cf]|avif|nef|cr2|arw|pef|srw|3fr|iiq|orf|rw2|raw)$/i;
/** Nobody means so many. */
const MOST_FILES = 200_000;

/** Everything given, folders looked through to their last, in the order of their names. */
export async function photoFiles(given: readonly (File | FileSystemEntry)[]): Promise<PhotoFile[]> {
  const found: PhotoFile[] = [];
  for (const each of given) {
    if (each instanceof File) addFile(each, found);
    else await addEntry(each, '', found);
  }
  // A name with a line break could not be told from two in a table.
  return found.filter(({ name }) => !/\p{Cc}/u.test(name)).sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** A folder that was chosen comes as its files, each with its path from that folder on. */
function addFile(file: File, found: PhotoFile[]): void {
  const inside = file.webkitRelativePath.split('/').slice(1);
  if (inside.length === 0) found.push({ name: file.name, file });
  else if (PICTURE.test(file.name) && !inside.some((part) => part.startsWith('.'))) {
    found.push({ name: inside.join('/'), file });
  }
}

async function addEntry(entry: FileSystemEntry, within: string, found: PhotoFile[]): Promise<void> {
  if (found.length >= MOST_FILES) return;
  if (entry instanceof FileSystemFileEntry) {
    const file = await new Promise<File>((done, fail) => entry.file(done, fail));
    found.push({ name: within + entry.name, file });
    return;
  }
  if (!(entry instanceof FileSystemDirectoryEntry)) return;
  const folder = within === '' && entry.fullPath.lastIndexOf('/') === 0 ? '' : `${within}${entry.name}/`;
  for (const inside of await entriesOf(entry)) {
    if (inside.name.startsWith('.') || (inside.isFile && !PICTURE.test(inside.name))) continue;
    await addEntry(inside, folder, found);
  }
}

/** A browser hands over a hundred at a time. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) return all;
    all.push(...some);
  }
}
