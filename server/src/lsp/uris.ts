/**
 * Between the protocol's URIs and the paths that spans carry. Editors disagree about how a path is written as a URI
 * (`file:///c%3A/a%20b` and `file:///C:/a b` are one file), so everything inside goes by the path.
 */

const onWindows = process.platform === 'win32';

/**
 * The path of a `file:` URI, with forward slashes and a lower-case drive letter; a share is `//host/path`. Undefined for
 * every other scheme and for what cannot be decoded.
 */
export function pathOfUri(uri: string, windows = onWindows): string | undefined {
  const match = /^file:(?:\/\/([^/?#]*))?(\/[^?#]*)/i.exec(uri);
  if (match === null) {
    return undefined;
  }
  let host: string;
  let path: string;
  try {
    host = decodeURIComponent(match[1] ?? '');
    path = decodeURIComponent(match[2] ?? '');
  } catch {
    return undefined;
  }
  if (host !== '' && host.toLowerCase() !== 'localhost') {
    path = `//${host}${path}`;
  }
  return windows ? canonicalPath(path.replace(/^\/(?=[A-Za-z]:)/, ''), windows) : path;
}

/** The `file:` URI of an absolute path with forward slashes, percent-encoded the way the protocol's own examples are. */
export function uriOfPath(path: string, windows = onWindows): string {
  const canonical = canonicalPath(path, windows);
  const share = /^\/\/([^/]+)(\/.*)?$/.exec(canonical);
  if (share !== null) {
    return `file://${encode(share[1] ?? '')}${encode(share[2] ?? '/')}`;
  }
  return `file://${canonical.startsWith('/') ? '' : '/'}${encode(canonical)}`;
}

/** One spelling for one file: forward slashes and a lower-case drive letter on Windows, unchanged elsewhere. */
export function canonicalPath(path: string, windows = onWindows): string {
  if (!windows) {
    return path;
  }
  return path.replaceAll('\\', '/').replace(/^[A-Za-z]:/, (drive) => drive.toLowerCase());
}

/** The folder of an absolute path with forward slashes. */
export function folderOf(path: string): string {
  const end = path.lastIndexOf('/');
  return end === 0 ? '/' : path.slice(0, Math.max(0, end));
}

/** The last name of a path with forward slashes. */
export function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

function encode(path: string): string {
  // encodeURIComponent leaves !'()* alone, which some clients do not; it throws on half a surrogate pair, which a name on disk can hold.
  return path
    .replace(/\p{Surrogate}/gu, '\ufffd')
    .split('/')
    .map((part) => encodeURIComponent(part).replace(/[!'()*]/g, percent))
    .join('/');
}

function percent(character: string): string {
  return `%${character.charCodeAt(0).toString(16).toUpperCase()}`;
}
